import type { Draft } from 'immer';
import { isUnread } from '../../engine/diagnosis/index.ts';
import { entryWords, fileWords, quickWords } from '../../engine/messages/index.ts';
import { feedApart, feedTogether, type QuickParts } from '../../engine/quick/index.ts';
import { type CircumstanceKind, displayMeanings, type Snapshot, supplyMeanings } from '../../engine/schema/index.ts';
import { nextReport } from '../find/entryWalk.ts';
import type { AppState, DocumentState } from '../state/appState.ts';
import { documentCommand, viewCommand } from '../state/command.ts';
import { currentSnapshot, draftSnapshot, dropPhoto, findDisplay, findReport } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';

/*
 * The commands of entering what is seen, besides the displays and reports themselves: the cabinet as found, notes, photos, and what
 * came before the fault.
 */

/** What a note or a photo is about: one display, or one chain's report. */
export type Seen = { readonly kind: 'display'; readonly unit: string } | { readonly kind: 'report'; readonly chain: string };

const unlessSimulating = (state: AppState) => !state.inject.on;

/** "-TB2", "the report of chain 1". */
function nameSeen({ checked }: AppState, seen: Seen): string {
  const names = namesOf(checked.topology);
  return seen.kind === 'display' ? names.unit(seen.unit) : entryWords.notes.steps.report(names.chain(seen.chain));
}

/** The observation that is noted; a display that nobody has read yet is kept as "not read yet". None for a report that is not entered. */
function draftObservation(draft: Draft<DocumentState>, seen: Seen, at: string) {
  const snapshot = draftSnapshot(draft.caseRecord);
  if (seen.kind === 'report') return snapshot.reports?.find(({ chain }) => chain === seen.chain);
  const found = findDraft(snapshot, seen.unit);
  if (found) return found;
  const isSupply = draft.cabinet.units?.some(({ id, kind }) => id === seen.unit && kind === 'supply') ?? false;
  snapshot.displays = [...(snapshot.displays ?? []), { unit: seen.unit, meanings: [...(isSupply ? supplyMeanings : displayMeanings)], at }];
  return findDraft(snapshot, seen.unit);
}

const findDraft = ({ displays }: Draft<Snapshot>, wanted: string) => displays?.find(({ unit }) => unit === wanted);

/** A display that was never read, and of which nothing is noted any more, is as if nobody had looked. */
function forgetEmpty(draft: Draft<DocumentState>, seen: Seen): void {
  const snapshot = draftSnapshot(draft.caseRecord);
  if (seen.kind !== 'display') return;
  const found = findDisplay(snapshot, seen.unit);
  if (found && isUnread(found.meanings) && found.note === undefined && found.photo === undefined) {
    snapshot.displays = (snapshot.displays ?? []).filter(({ unit }) => unit !== seen.unit);
  }
}

function findSeen(state: Pick<AppState, 'caseRecord'>, seen: Seen) {
  const snapshot = currentSnapshot(state.caseRecord);
  return seen.kind === 'display' ? findDisplay(snapshot, seen.unit) : findReport(snapshot, seen.chain);
}

/** A photo id that the cabinet does not have yet. */
function freePhotoId(photos: readonly { readonly id: string }[]): string {
  const taken = new Set(photos.map(({ id }) => id));
  let number = photos.length + 1;
  while (taken.has(`photo${number}`)) number += 1;
  return `photo${number}`;
}

export const entryCommands = {
  'build-quick-chain': documentCommand<{ readonly parts: QuickParts; readonly supplyAssumed: boolean }>({
    label: 'buildQuickChain',
    isEnabled: (state) => unlessSimulating(state) && state.checked.topology.units.size === 0,
    undo: 'step',
    name: (_state, { parts }) => quickWords.step(parts.units.filter(({ kind }) => kind !== 'supply').length),
    run: (draft, { parts, supplyAssumed }) => {
      // The parts are made for this run and given away: nobody else holds them.
      Object.assign(draft.cabinet, parts);
      if (draft.cabinet.name === fileWords.newCabinetName) draft.cabinet.name = quickWords.cabinetName;
      draft.cabinet.notes ??= quickWords.cabinetNotes(supplyAssumed, parts.feedbacks.length > 0);
    },
  }),

  'feed-together': documentCommand<{ readonly units: readonly string[] }>({
    label: 'feedTogether',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: ({ checked }, { units }) => quickWords.sharedFeed.step(units.map((unit) => namesOf(checked.topology).unit(unit))),
    run: (draft, { units }) => {
      draft.cabinet.leads = feedTogether(draft.cabinet.leads ?? [], units);
    },
  }),

  'feed-apart': documentCommand<{ readonly units: readonly string[] }>({
    label: 'feedApart',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: ({ checked }, { units }) => quickWords.sharedFeed.stepApart(units.map((unit) => namesOf(checked.topology).unit(unit))),
    run: (draft, { units }) => {
      draft.cabinet.leads = feedApart(draft.cabinet.leads ?? [], units, quickWords.sharedFeed.notes);
    },
  }),

  'note-seen': documentCommand<{ readonly seen: Seen; readonly note: string; readonly at: string }>({
    label: 'noteSeen',
    isEnabled: unlessSimulating,
    undo: { mergeBy: ({ seen }) => `note/${seen.kind}/${seen.kind === 'display' ? seen.unit : seen.chain}` },
    name: (state, { seen }) => entryWords.notes.steps.note(nameSeen(state, seen)),
    subject: ({ seen }) => (seen.kind === 'display' ? seen.unit : null),
    run: (draft, { seen, note, at }) => {
      if (note.trim() === '' && !findSeen(draft, seen)) return;
      const observation = draftObservation(draft, seen, at);
      if (!observation) return;
      if (note.trim() === '') delete observation.note;
      else observation.note = note;
      forgetEmpty(draft, seen);
    },
  }),

  'add-photo': documentCommand<{ readonly seen: Seen; readonly data: string; readonly takenOn: string; readonly at: string }>({
    label: 'addPhoto',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (state, { seen }) => entryWords.notes.steps.photo(nameSeen(state, seen)),
    subject: ({ seen }) => (seen.kind === 'display' ? seen.unit : null),
    run: (draft, { seen, data, takenOn, at }) => {
      const observation = draftObservation(draft, seen, at);
      if (!observation) return;
      const before = observation.photo;
      const photos = draft.cabinet.photos ?? [];
      const id = freePhotoId(photos);
      const thing = seen.kind === 'display' ? draft.cabinet.units?.find((unit) => unit.id === seen.unit)?.designation : undefined;
      const number = seen.kind === 'report' ? draft.cabinet.chains?.find((chain) => chain.id === seen.chain)?.number : undefined;
      const caption =
        number === undefined ? entryWords.notes.caption(thing ?? '') : entryWords.notes.reportCaption(quickWords.chain(number));
      draft.cabinet.photos = [...photos, { id, caption, takenOn, mediaType: 'image/jpeg', data }];
      observation.photo = id;
      if (before !== undefined) dropPhoto(draft, before);
    },
  }),

  'remove-photo': documentCommand<{ readonly seen: Seen }>({
    label: 'removePhoto',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (state, { seen }) => entryWords.notes.steps.removePhoto(nameSeen(state, seen)),
    subject: ({ seen }) => (seen.kind === 'display' ? seen.unit : null),
    run: (draft, { seen }) => {
      const photo = findSeen(draft, seen)?.photo;
      if (photo === undefined) return;
      const observation = draftObservation(draft, seen, '');
      if (observation) delete observation.photo;
      dropPhoto(draft, photo);
      forgetEmpty(draft, seen);
    },
  }),

  'set-circumstance': documentCommand<{ readonly kind: CircumstanceKind; readonly subjects: readonly string[] | null }>({
    label: 'setCircumstance',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (_state, { kind, subjects }) => entryWords.circumstances.step(kind, subjects !== null),
    run: (draft, { kind, subjects }) => {
      const { evidence } = draft.caseRecord;
      const listed = evidence.circumstances ?? [];
      if (subjects === null) {
        if (listed.some((one) => one.kind === kind)) evidence.circumstances = listed.filter((one) => one.kind !== kind);
        return;
      }
      const entry = { kind, ...(subjects.length > 0 ? { subjects: [...subjects] } : {}) };
      evidence.circumstances = listed.some((one) => one.kind === kind)
        ? listed.map((one) => (one.kind === kind ? entry : one))
        : [...listed, entry];
    },
  }),

  'set-days-since-whole': documentCommand<{ readonly days: number | null }>({
    label: 'setDaysSinceWhole',
    isEnabled: unlessSimulating,
    undo: { mergeBy: () => 'days-since-whole' },
    name: () => entryWords.circumstances.stepDays,
    run: (draft, { days }) => {
      if (days === null) delete draft.caseRecord.evidence.daysSinceWhole;
      else draft.caseRecord.evidence.daysSinceWhole = days;
    },
  }),

  'toggle-walk-order': viewCommand({
    label: 'toggleWalkOrder',
    isEnabled: () => true,
    run: (state) => {
      const walkOrder = state.walkOrder === 'chain' ? 'mounting' : 'chain';
      return { walkOrder, announcement: { text: entryWords.walk.orderNow[walkOrder], number: state.announcement.number + 1 } };
    },
  }),

  'enter-next-report': viewCommand({
    label: 'enterNextReport',
    shortcuts: ['R'],
    keysIn: 'find',
    isEnabled: (state) => unlessSimulating(state) && state.checked.topology.chains.some(({ units }) => units.length > 0),
    run: (state) => {
      const chain = nextReport(state) ?? state.checked.topology.chains.find(({ units }) => units.length > 0)?.id;
      return chain === undefined ? {} : { entry: { kind: 'report', chain, walking: false } };
    },
  }),
} as const;
