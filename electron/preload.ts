import { contextBridge, ipcRenderer } from 'electron';
import type { CallName, DesktopBridge, NoticeName } from './ipc/bridge.ts';
import { callChannels, noticeChannels } from './ipc/channels.ts';

// The answer's type is that of the call: the desktop program answers each channel with the type its name has in the list.
const ask = (name: CallName) => (): Promise<never> => ipcRenderer.invoke(callChannels[name]) as Promise<never>;

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
  takeNotices: ask('takeNotices'),
  takeHandedOverFiles: ask('takeHandedOverFiles'),
  onFilesHandedOver: listen('filesHandedOver'),
};

contextBridge.exposeInMainWorld('linkwright', bridge);
