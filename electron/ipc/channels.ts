import type { CallName, NoticeName } from './bridge.ts';

/** The channel behind each call: the only ones on which the desktop program listens. */
export const callChannels: { readonly [Name in CallName]: string } = {
  describeProgram: 'linkwright:describe-program',
  changeTextSize: 'linkwright:change-text-size',
  takeNotices: 'linkwright:take-notices',
  takeHandedOverFiles: 'linkwright:take-handed-over-files',
  chooseFile: 'linkwright:choose-file',
  saveFileAs: 'linkwright:save-file-as',
  exportFile: 'linkwright:export-file',
  saveFile: 'linkwright:save-file',
  chooseList: 'linkwright:choose-list',
  chooseJsonFiles: 'linkwright:choose-json-files',
  deleteResult: 'linkwright:delete-result',
  readFileAgain: 'linkwright:read-file-again',
  peekFile: 'linkwright:peek-file',
  lookAtFile: 'linkwright:look-at-file',
  keepMine: 'linkwright:keep-mine',
  readKeptCopy: 'linkwright:read-kept-copy',
  findCabinetBeside: 'linkwright:find-cabinet-beside',
  listRecentFiles: 'linkwright:list-recent-files',
  openRecentFile: 'linkwright:open-recent-file',
  keepRecovery: 'linkwright:keep-recovery',
  dropRecovery: 'linkwright:drop-recovery',
  listRecoveries: 'linkwright:list-recoveries',
  keepCase: 'linkwright:keep-case',
  listKeptCases: 'linkwright:list-kept-cases',
  dropKeptCase: 'linkwright:drop-kept-case',
  tellUnsaved: 'linkwright:tell-unsaved',
  answerClose: 'linkwright:answer-close',
};

/** The channel behind each notice. */
export const noticeChannels: { readonly [Name in NoticeName]: string } = {
  filesHandedOver: 'linkwright:files-handed-over',
  closeAsked: 'linkwright:close-asked',
};
