import type { CallName, NoticeName } from './bridge.ts';

/** The channel behind each call: the only ones on which the desktop program listens. */
export const callChannels: { readonly [Name in CallName]: string } = {
  describeProgram: 'linkwright:describe-program',
  takeNotices: 'linkwright:take-notices',
  takeHandedOverFiles: 'linkwright:take-handed-over-files',
  chooseFile: 'linkwright:choose-file',
  saveFileAs: 'linkwright:save-file-as',
};

/** The channel behind each notice. */
export const noticeChannels: { readonly [Name in NoticeName]: string } = {
  filesHandedOver: 'linkwright:files-handed-over',
};
