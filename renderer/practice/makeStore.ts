import { createStore } from 'zustand/vanilla';
import type { Problem } from '../../engine/base/index.ts';
import { type CheckedCabinet, checkCabinet } from '../../engine/cabinet/index.ts';
import { type MadeExercise, type PlanStep, type Proposal, usualTimes } from '../../engine/exercise/index.ts';
import type { DraftProblem } from '../../engine/messages/index.ts';
import type { CabinetContent, ExerciseContent } from '../../engine/schema/index.ts';
import { keepPossible } from '../inject/faultChoices.ts';
import { loadSample } from '../samples/sampleCabinets.ts';
import {
  decideSteps,
  isOwn,
  type KeptDraft,
  kindFor,
  type MakeDraft,
  missingOf,
  newDraft,
  shownAtStart,
  wishOf,
  withKind,
} from './makeDraft.ts';
import { openMaker } from './makerClient.ts';
import type { MakerReply } from './makerProtocol.ts';

/*
 * The sitting of an instructor who makes an exercise. Like a play it changes nothing of the document, and stays while the window shows
 * something else.
 */

/** How the working out of a draft stands. */
export type MakeStatus =
  | { readonly state: 'missing'; readonly problems: readonly DraftProblem[] }
  | { readonly state: 'working'; readonly share: number }
  | { readonly state: 'stopped' }
  | { readonly state: 'refused'; readonly problems: readonly Problem[] }
  | { readonly state: 'made'; readonly made: MadeExercise; readonly plan: readonly PlanStep[] };

export interface MakeState {
  readonly draft: MakeDraft;
  /** Drafts that wait to be taken up again, the latest first. */
  readonly aside: readonly KeptDraft[];
  readonly checked: CheckedCabinet | null;
  readonly content: CabinetContent | null;
  readonly proposal: Proposal | null;
  readonly status: MakeStatus;
  readonly sealing: boolean;
  /** The name under which it was saved as it stands now. */
  readonly savedAs: string | null;
  /** Drafts that were saved: locked with their passphrase, since what they hide must not lie open beside the sealed file; the latest first. */
  readonly locked: readonly LockedDraft[];
}

/** A draft that only its passphrase opens again. */
export interface LockedDraft {
  readonly id: string;
  readonly name: string;
  readonly savedAs: string;
  readonly locked: string;
}

export const makeStore = createStore<MakeState>(() => ({
  draft: newDraft(new Date()),
  aside: [],
  checked: null,
  content: null,
  proposal: null,
  status: { state: 'missing', problems: ['no-fault'] },
  sealing: false,
  savedAs: null,
  locked: [],
}));

const client = openMaker();
/** So long nobody typed: the rest is worked out, milliseconds. */
const patience = 250;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Changes the draft, and works out anew what follows from it. */
export function changeDraft(change: Partial<MakeDraft>): void {
  makeStore.setState(({ draft, checked }) => ({ draft: withUsualKind({ ...draft, ...change }, checked) }));
  workOut(patience);
}

function withUsualKind(draft: MakeDraft, checked: CheckedCabinet | null): MakeDraft {
  return draft.kindChosen || checked === null ? draft : withKind(draft, kindFor(checked.topology, draft.faults));
}

/** Begins another exercise; what was made so far is put aside. One that was begun before, and changed since, is gone on with instead. */
export function beginDraft(begun: Partial<MakeDraft> = {}): void {
  const { draft, aside, content } = makeStore.getState();
  const isBegun = (one: MakeDraft) => begun.id !== undefined && one.id === begun.id;
  if (isBegun(draft)) return;
  const waiting = aside.find((one) => isBegun(one.draft) && (content === null || one.cabinet?.id === content.id));
  makeStore.setState((before) => ({
    draft: waiting?.draft ?? withUsualKind(newDraft(new Date(), begun), before.checked),
    aside: withAside(before, before.draft).filter((one) => one !== waiting),
    proposal: null,
    savedAs: null,
  }));
  workOut(0);
}

/** The drafts put aside, with another one in front, where it holds anything and is not saved. */
function withAside({ aside, content, savedAs }: MakeState, draft: MakeDraft): readonly KeptDraft[] {
  if (!isOwn(draft) || savedAs !== null) return aside;
  const cabinet = content === null ? null : { id: content.id, name: content.name };
  return [{ draft, cabinet }, ...aside.filter((one) => one.draft.id !== draft.id)];
}

/** Whether a draft can be gone on with: its cabinet is a sample, or the one that is open. */
export function mayTakeUp({ draft, cabinet }: KeptDraft, open: CabinetContent): boolean {
  return draft.sample !== null || cabinet === null || cabinet.id === open.id;
}

/** Goes on with a draft that was put aside; the one that is worked on takes its place. */
export async function takeUpDraft(kept: KeptDraft, open: CabinetContent): Promise<void> {
  const { sample } = kept.draft;
  const read = sample === null ? null : await loadSample(`${sample}.cabinet.json`);
  if (read?.ok === false) return;
  const content = read === null ? open : read.value.cabinet;
  const checked = checkCabinet(content);
  const faults = checked.cabinet === null ? kept.draft.faults : keepPossible(checked.cabinet, kept.draft.faults);
  makeStore.setState((before) => ({
    content,
    checked,
    draft: { ...kept.draft, faults },
    aside: withAside(before, before.draft).filter((one) => one.draft.id !== kept.draft.id),
    proposal: null,
    savedAs: null,
  }));
  workOut(0);
}

/** Throws a draft away that was put aside. */
export function dropAside(id: string): void {
  makeStore.setState(({ aside }) => ({ aside: aside.filter(({ draft }) => draft.id !== id) }));
}

/** Drafts of an earlier run: the one that was worked on is gone on with where its cabinet is there, the others wait. */
export function restoreDrafts(current: KeptDraft | null, others: readonly KeptDraft[], open: CabinetContent): void {
  const goesOn = current !== null && !isOwn(makeStore.getState().draft) && mayTakeUp(current, open) ? current : null;
  makeStore.setState(({ aside }) => {
    const waiting = [...(current === null || current === goesOn ? [] : [current]), ...others];
    return { aside: [...aside, ...waiting.filter(({ draft }) => !aside.some((one) => one.draft.id === draft.id))] };
  });
  if (goesOn !== null) void takeUpDraft(goesOn, open);
}

/** The cabinet of the window, as it is now; does nothing while a sample is used. */
export function followCabinet(content: CabinetContent): void {
  const { draft } = makeStore.getState();
  if (draft.sample === null) takeCabinet(content, null);
}

/** Takes a sample (null: the cabinet of the window again). */
export async function chooseCabinet(sample: string | null, open: CabinetContent): Promise<void> {
  choices += 1;
  const choice = choices;
  if (sample === null) {
    takeCabinet(open, null);
    return;
  }
  const read = await loadSample(`${sample}.cabinet.json`);
  if (read.ok && choice === choices) takeCabinet(read.value.cabinet, sample);
}

/** Counts choices of a cabinet, so that only the last one is followed. */
let choices = 0;

/** Works on a cabinet; what the draft held of another one, and would lose, is put aside with it. */
function takeCabinet(content: CabinetContent, sample: string | null): void {
  const before = makeStore.getState();
  if (before.content === content && before.draft.sample === sample) return;
  const checked = checkCabinet(content);
  const faults = checked.cabinet === null ? before.draft.faults : keepPossible(checked.cabinet, before.draft.faults);
  const isOther = before.content !== null && before.content.id !== content.id;
  // What was decided of the steps and the things of one cabinet says nothing of another.
  const { displays, reports, steps } = before.draft;
  const isKept = typeof displays === 'string' && typeof reports === 'string' && Object.keys(steps).length === 0;
  const loses = isOther && !(isKept && faults.length === before.draft.faults.length);
  const reset: Partial<MakeDraft> = { id: newDraft(new Date()).id, displays: 'complaining', reports: 'complaining', steps: {} };
  makeStore.setState({
    content,
    checked,
    draft: withUsualKind({ ...before.draft, sample, faults, ...(loses ? reset : {}) }, checked),
    aside: loses ? withAside(before, before.draft) : before.aside,
  });
  workOut(0);
}

/** Works out the best plan, a moment after the last change. */
export function workOut(after = 0): void {
  client.stop();
  clearTimeout(timer);
  const { draft, checked, content, proposal } = makeStore.getState();
  const cabinet = checked?.cabinet ?? null;
  const missing = missingOf(draft, cabinet);
  const shown = cabinet === null || missing.includes('mistake-while-running') ? null : shownAtStart(cabinet, draft);
  if (missing.length > 0 || cabinet === null || content === null || shown === null) {
    const known = draft.faults.length === 0 ? null : proposal;
    makeStore.setState({ status: { state: 'missing', problems: missing }, proposal: known, sealing: false, savedAs: null });
    return;
  }
  makeStore.setState({ status: { state: 'working', share: 0 }, sealing: false, savedAs: null });
  timer = setTimeout(() => {
    const wish = wishOf(draft, content, shown, usualTimes(cabinet));
    client.ask({ kind: 'make', wish, decisions: draft.steps, spares: draft.spares }, take);
  }, after);
}

/** Gives up what is being worked out. */
export function stopWork(): void {
  client.stop();
  clearTimeout(timer);
  makeStore.setState({ status: { state: 'stopped' }, sealing: false });
}

function take(reply: MakerReply): void {
  switch (reply.kind) {
    case 'proposed': {
      makeStore.setState({ proposal: reply.proposal });
      if (!decideSteps(reply.proposal.steps, makeStore.getState().draft.steps).some(({ allowed }) => allowed)) {
        client.stop();
        makeStore.setState({ status: { state: 'missing', problems: ['no-step'] } });
      }
      return;
    }
    case 'progress':
      makeStore.setState({ status: { state: 'working', share: reply.share } });
      return;
    case 'made':
      makeStore.setState({ status: { state: 'made', made: reply.made, plan: reply.plan } });
      return;
    case 'refused':
      makeStore.setState({ status: { state: 'refused', problems: reply.problems } });
      return;
  }
}

/** Seals what was made, and hands it over. */
export function sealMade(passphrase: string, onSealed: (exercise: ExerciseContent) => void): void {
  const { status } = makeStore.getState();
  if (status.state !== 'made') return;
  makeStore.setState({ sealing: true });
  const { exercise, answer } = status.made;
  client.ask({ kind: 'seal', exercise, answer, passphrase }, (reply) => {
    makeStore.setState({ sealing: false });
    if (reply.kind === 'sealed') onSealed(reply.exercise);
  });
}

/** Puts what was saved under its seal out of sight, unless it was changed meanwhile: from now on its passphrase is needed to see it. */
export function lockSaved(saved: MakeDraft, passphrase: string, savedAs: string): void {
  const { draft, content } = makeStore.getState();
  if (draft !== saved) return;
  makeStore.setState({ savedAs, sealing: true });
  const kept: KeptDraft = { draft, cabinet: content === null ? null : { id: content.id, name: content.name } };
  client.ask({ kind: 'lock', text: JSON.stringify(kept), passphrase }, (reply) => {
    if (reply.kind !== 'locked' || makeStore.getState().draft !== saved) return;
    const one = { id: draft.id, name: draft.name, savedAs, locked: reply.locked };
    makeStore.setState((before) => ({
      locked: [one, ...before.locked.filter(({ id }) => id !== draft.id)],
      draft: withUsualKind(newDraft(new Date(), { sample: draft.sample }), before.checked),
      proposal: null,
      sealing: false,
      savedAs: null,
    }));
    workOut(0);
  });
}

/** Opens a locked draft again, and answers whether it opened. */
export function unlockDraft(one: LockedDraft, passphrase: string, open: CabinetContent): Promise<boolean> {
  return new Promise((resolve) => {
    client.ask({ kind: 'unlock', locked: one.locked, passphrase }, (reply) => {
      if (reply.kind !== 'unlocked') return;
      if (reply.text === null) {
        resolve(false);
        workOut(0);
        return;
      }
      const kept = JSON.parse(reply.text) as KeptDraft; // the text is the one that was locked
      if (mayTakeUp(kept, open)) void takeUpDraft(kept, open);
      else makeStore.setState(({ aside }) => ({ aside: [kept, ...aside] }));
      makeStore.setState(({ locked }) => ({ locked: locked.filter((other) => other !== one) }));
      resolve(true);
    });
  });
}
