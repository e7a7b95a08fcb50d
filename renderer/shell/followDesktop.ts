import type { Workbench } from '../state/dispatcher.ts';
import { findDesktop } from './desktopBridge.ts';
import { takeFile } from './effects.ts';

/** Takes in what the desktop program has for its page: files named at the start or by a second start, and things to tell. */
export function followDesktop(bench: Pick<Workbench, 'openDocument' | 'refuse'>): void {
  const desktop = findDesktop();
  if (!desktop) return;

  const takeFiles = async () => {
    const taken = await desktop.takeHandedOverFiles();
    if (!taken.ok) return;
    for (const file of taken.value) {
      if (file.ok) takeFile(bench, file.value);
      else bench.refuse({ deed: 'open', problems: file.problems });
    }
  };
  const tellNotices = async () => {
    const taken = await desktop.takeNotices();
    if (taken.ok && taken.value.length > 0) bench.refuse({ deed: 'start', problems: taken.value });
  };

  desktop.onFilesHandedOver(() => void takeFiles());
  void tellNotices().then(takeFiles);
}
