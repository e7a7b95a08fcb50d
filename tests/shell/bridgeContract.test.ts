import { expectTypeOf, it } from 'vitest';
import type { DesktopBridge as OfferedBridge } from '../../electron/ipc/bridge.ts';
import type { DesktopBridge as ExpectedBridge } from '../../renderer/files/desktopBridge.ts';

// Checked by the compiler (`npm run types`): neither side may import the other, so each declares the bridge, and here they meet.
it('should offer the page what the page expects, and nothing else', () => {
  expectTypeOf<OfferedBridge>().toExtend<ExpectedBridge>();
  expectTypeOf<ExpectedBridge>().toExtend<OfferedBridge>();
  expectTypeOf<keyof OfferedBridge>().toEqualTypeOf<keyof ExpectedBridge>();
});
