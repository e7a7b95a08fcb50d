import type { CabinetContent } from '../../engine/schema/index.ts';
import { drivesOffChain } from './drivesOffChain.ts';
import { fortyUnits } from './fortyUnits.ts';
import { mixedBehaviours } from './mixedBehaviours.ts';
import type { Sample } from './sketch.ts';
import { threeUnits } from './threeUnits.ts';
import { twoChains } from './twoChains.ts';
import { twoSupplies } from './twoSupplies.ts';
import { unfinished, withProblems } from './unsound.ts';

/** Every sample that can be simulated, with its cases. */
export const soundSamples: readonly Sample[] = [threeUnits, drivesOffChain, twoChains, mixedBehaviours, twoSupplies, fortyUnits];

/** Samples that only open and list their problems. */
export const unsoundSamples: Readonly<Record<string, CabinetContent>> = { unfinished, 'with-problems': withProblems };
