/** Why no desktop window can be opened on this machine, before trying. */
export type NoWindow = 'no-display' | 'root';

/** What the answer depends on. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly environment: NodeJS.ProcessEnv;
  /** Numeric user id, where the system has one. */
  readonly user: number | undefined;
  readonly noSandbox: boolean;
}

/** Looks at the machine alone; undefined when nothing speaks against a window. */
export function findNoWindowReason(machine: Machine): NoWindow | undefined {
  if (machine.platform !== 'linux') return undefined;
  if (!machine.environment['DISPLAY'] && !machine.environment['WAYLAND_DISPLAY']) return 'no-display';
  // The runtime's sandbox refuses to work for root, and without it a hostile page could reach everything.
  if (machine.user === 0 && !machine.noSandbox) return 'root';
  return undefined;
}
