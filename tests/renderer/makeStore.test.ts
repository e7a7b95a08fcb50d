import fc from 'fast-check';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Fault } from '../../engine/schema/index.ts';
import { keepDrafts, readKeptDrafts, writeKeptDrafts } from '../../renderer/practice/keepDrafts.ts';
import { isOwn, newDraft } from '../../renderer/practice/makeDraft.ts';
import type { MakerQuestion, MakerReply } from '../../renderer/practice/makerProtocol.ts';
import {
  beginDraft,
  changeDraft,
  dropAside,
  followCabinet,
  lockSaved,
  makeStore,
  mayTakeUp,
  restoreDrafts,
  takeUpDraft,
  unlockDraft,
} from '../../renderer/practice/makeStore.ts';
import { schoolCabinet } from '../samples/schoolCabinet.ts';
import { threeUnits } from '../samples/threeUnits.ts';

const cut: Fault = { item: 'cable', link: 'WH3', mode: 'cut' };
const other = threeUnits.content;

// Nothing is worked out here; what is locked is opened by the passphrase alone.
vi.stubGlobal(
  'Worker',
  class {
    onmessage: ((event: { readonly data: MakerReply }) => void) | null = null;
    postMessage(question: MakerQuestion) {
      if (question.kind === 'lock') this.onmessage?.({ data: { kind: 'locked', locked: btoa(`${question.passphrase} ${question.text}`) } });
      if (question.kind !== 'unlock') return;
      const [passphrase, text] = splitOnce(atob(question.locked));
      this.onmessage?.({ data: { kind: 'unlocked', text: passphrase === question.passphrase ? text : null } });
    }
    terminate() {}
  },
);
const splitOnce = (text: string) => [text.slice(0, text.indexOf(' ')), text.slice(text.indexOf(' ') + 1)] as const;
vi.useFakeTimers();
const empty = makeStore.getState();
const now = () => makeStore.getState();

beforeEach(() => {
  makeStore.setState({ ...empty, draft: newDraft(new Date()) });
  followCabinet(schoolCabinet);
});

describe('drafts of exercises', () => {
  it('should put what somebody made aside when another is begun, and go on with it', async () => {
    changeDraft({ faults: [cut], story: 'A tool box.', steps: { x: { minutes: 9 } } });
    const first = now().draft;
    vi.advanceTimersByTime(1);
    beginDraft();
    expect(isOwn(now().draft)).toBe(false);
    expect(now().aside).toEqual([{ draft: first, cabinet: { id: schoolCabinet.id, name: schoolCabinet.name } }]);
    changeDraft({ task: 'Another.' });
    const second = now().draft;
    const [kept] = now().aside;
    if (kept === undefined) throw new Error('nothing kept');
    await takeUpDraft(kept, schoolCabinet);
    expect(now().draft).toEqual(first);
    expect(now().aside.map(({ draft }) => draft)).toEqual([second]);
    dropAside(second.id);
    expect(now().aside).toEqual([]);
  });

  it('should go on with a generated exercise as it was changed, however often it is asked for', () => {
    const generated = { ...newDraft(new Date(0), { faults: [cut] }), id: 'g3-0-neighbours' };
    beginDraft(generated);
    changeDraft({ steps: { x: { allowed: false } } });
    beginDraft(generated);
    expect(now().draft.steps).toEqual({ x: { allowed: false } });
    beginDraft({ ...generated, id: 'g3-1-power' });
    beginDraft(generated);
    expect(now().draft).toMatchObject({ id: generated.id, steps: { x: { allowed: false } } });
    expect(now().aside.map(({ draft }) => draft.id)).toEqual(['g3-1-power']);
  });

  it('should keep what another cabinet does not have, with the cabinet that has it', () => {
    changeDraft({ faults: [{ ...cut, link: 'WH8' }], name: 'Mine' });
    const before = now().draft;
    vi.advanceTimersByTime(1);
    followCabinet(other);
    expect(now().draft).toMatchObject({ faults: [], name: 'Mine' });
    const [kept] = now().aside;
    expect(kept).toEqual({ draft: before, cabinet: { id: schoolCabinet.id, name: schoolCabinet.name } });
    expect(kept && [mayTakeUp(kept, other), mayTakeUp(kept, schoolCabinet)]).toEqual([false, true]);
    expect(now().draft.id).not.toBe(before.id);
  });

  it('should lose nothing over any order of beginning, changing, taking up and other cabinets', async () => {
    const deed = fc.oneof(
      fc.record({ do: fc.constant('change' as const), story: fc.string({ minLength: 1, maxLength: 5 }) }),
      fc.record({ do: fc.constantFrom('begin' as const, 'take' as const, 'school' as const, 'other' as const, 'restart' as const) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(deed, { maxLength: 15 }), async (deeds) => {
        makeStore.setState({ ...empty, draft: newDraft(new Date()) });
        let open: typeof schoolCabinet = schoolCabinet;
        followCabinet(open);
        const typed = new Map<string, string>();
        for (const one of deeds) {
          vi.advanceTimersByTime(1);
          if (one.do === 'change') {
            changeDraft({ faults: [{ ...cut, link: 'WH8' }].slice(open === other ? 1 : 0), story: one.story });
            typed.set(now().draft.id, one.story);
          } else if (one.do === 'begin') beginDraft();
          else if (one.do === 'take') {
            const kept = now().aside.find((aside) => mayTakeUp(aside, open));
            if (kept !== undefined) await takeUpDraft(kept, open);
          } else if (one.do === 'restart') {
            const text = writeKeptDrafts(now());
            makeStore.setState({ ...empty, draft: newDraft(new Date()), aside: [] });
            const read = text === null ? null : readKeptDrafts(text);
            if (read !== null && !read.ok) throw new Error('not read');
            if (read !== null) restoreDrafts(read.value.current, read.value.aside, open);
            await Promise.resolve();
            followCabinet(open);
          } else {
            open = one.do === 'school' ? schoolCabinet : other;
            followCabinet(open);
          }
          const there = new Map([now().draft, ...now().aside.map(({ draft }) => draft)].map(({ id, story }) => [id, story]));
          for (const [id, story] of typed) expect(there.get(id)).toBe(story);
        }
      }),
      { numRuns: 60, seed: 9 },
    );
  });
});

describe('keeping drafts', () => {
  it('should keep them a moment after a change, not once they are saved, and never overlap', async () => {
    const files = new Map<string, string>();
    const access = {
      keepRecovery: async (id: string, _files: unknown, text: string) => {
        files.set(id, text);
        return { ok: true, value: null } as const;
      },
      dropRecovery: async (id: string) => {
        files.delete(id);
        return { ok: true, value: null } as const;
      },
    };
    keepDrafts(access, 'here', () => expect.unreachable());
    changeDraft({ faults: [cut], story: 'first' });
    changeDraft({ story: 'second' });
    expect(files.size).toBe(0);
    await vi.advanceTimersByTimeAsync(400);
    const read = readKeptDrafts(files.get('here') ?? '');
    expect(read.ok && read.value).toEqual({
      current: { draft: now().draft, cabinet: { id: schoolCabinet.id, name: schoolCabinet.name } },
      aside: [],
    });
    makeStore.setState({ savedAs: 'a.exercise.json' });
    await vi.advanceTimersByTimeAsync(400);
    expect(files.size).toBe(0);
  });

  it('should be out of sight once saved under a seal, and come back whole by the passphrase alone', async () => {
    changeDraft({ faults: [cut], story: 'A tool box.' });
    const { draft } = now();
    lockSaved(draft, 'kiln', 'a.exercise.json');
    expect(JSON.stringify(now())).not.toContain('A tool box.');
    expect(isOwn(now().draft)).toBe(false);
    const [one] = now().locked;
    if (one === undefined) throw new Error('not locked');
    expect(await unlockDraft(one, 'quartz', schoolCabinet)).toBe(false);
    expect(now().locked).toEqual([one]);
    expect(await unlockDraft(one, 'kiln', schoolCabinet)).toBe(true);
    expect(now().draft).toEqual(draft);
    expect(now().locked).toEqual([]);
  });

  it('should stay where it was changed while it was being saved', () => {
    changeDraft({ faults: [cut] });
    const { draft } = now();
    changeDraft({ story: 'More.' });
    lockSaved(draft, 'kiln', 'a.exercise.json');
    expect(now()).toMatchObject({ draft: { story: 'More.' }, locked: [] });
  });

  it.each(['', '{"format":"linkwright-drafts",', '{"format":"linkwright-drafts","version":1,"current":7,"aside":[]}'])(
    'should say that damaged ones cannot be brought back: %j',
    (text) => {
      const read = readKeptDrafts(text);
      expect(read.ok ? [] : read.problems.map(({ code }) => code)).toEqual(['drafts-not-restored']);
    },
  );
});
