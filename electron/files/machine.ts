import { createHash } from 'node:crypto';
import { hostname, userInfo } from 'node:os';
import { type Disk, nodeDisk } from './disk.ts';

/** What file work needs of the machine it runs on; tests put another one in its place. */
export interface Machine {
  readonly disk: Disk;
  readonly windows: boolean;
  readonly now: () => Date;
  readonly pause: (milliseconds: number) => Promise<void>;
  /** Tells the unfinished files of this user on this machine from those of others in the same folder. */
  readonly mark: string;
}

export function thisMachine(): Machine {
  return {
    disk: nodeDisk,
    windows: process.platform === 'win32',
    now: () => new Date(),
    pause: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
    mark: digest(`${hostname()} ${userInfo().username}`),
  };
}

/** A short fingerprint of a text or of bytes. */
export function digest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}
