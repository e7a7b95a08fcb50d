import { contextBridge, ipcRenderer } from 'electron';
import type { CallName, DesktopBridge, NoticeName } from './ipc/bridge.ts';
import { callChannels, noticeChannels } from './ipc/channels.ts';

// Which arguments a call takes and what it answers is said by its name in the list; the desktop program checks the arguments again.
const ask =
  (name: CallName) =>
  (...args: readonly unknown[]): Promise<never> =>
    ipcRenderer.invoke(callChannels[name], ...args) as Promise<never>;

const listen =
  (name: NoticeName) =>
  (listener: () => void): (() => void) => {
    // The event leads back to the inside of the runtime, so the page never sees it.
    const forward = () => listener();
    ipcRenderer.on(noticeChannels[name], forward);
    return () => {
      ipcRenderer.off(noticeChannels[name], forward);
    };
  };

const bridge: DesktopBridge = {
  describeProgram: ask('describeProgram'),
  changeTextSize: ask('changeTextSize'),
  takeNotices: ask('takeNotices'),
  takeHandedOverFiles: ask('takeHandedOverFiles'),
  chooseFile: ask('chooseFile'),
  saveFileAs: ask('saveFileAs'),
  exportFile: ask('exportFile'),
  saveFile: ask('saveFile'),
  chooseList: ask('chooseList'),
  chooseJsonFiles: ask('chooseJsonFiles'),
  deleteResult: ask('deleteResult'),
  readFileAgain: ask('readFileAgain'),
  peekFile: ask('peekFile'),
  lookAtFile: ask('lookAtFile'),
  keepMine: ask('keepMine'),
  readKeptCopy: ask('readKeptCopy'),
  findCabinetBeside: ask('findCabinetBeside'),
  listRecentFiles: ask('listRecentFiles'),
  openRecentFile: ask('openRecentFile'),
  keepRecovery: ask('keepRecovery'),
  dropRecovery: ask('dropRecovery'),
  listRecoveries: ask('listRecoveries'),
  keepCase: ask('keepCase'),
  listKeptCases: ask('listKeptCases'),
  dropKeptCase: ask('dropKeptCase'),
  tellUnsaved: ask('tellUnsaved'),
  answerClose: ask('answerClose'),
  onFilesHandedOver: listen('filesHandedOver'),
  onCloseAsked: listen('closeAsked'),
};

contextBridge.exposeInMainWorld('linkwright', bridge);
