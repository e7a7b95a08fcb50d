import { describe, expect, it } from 'vitest';
import { unsavedParts } from '../../renderer/files/unsaved.ts';
import type { AppState } from '../../renderer/state/appState.ts';

type Part = Parameters<typeof unsavedParts>[0];
const cabinet = { id: 'c', name: 'Grinder' };
const changed = { ...cabinet, name: 'Lathe' };
const caseRecord: AppState['caseRecord'] = { id: 'case', name: 'case', evidence: { snapshots: [] } };
const answered: AppState['caseRecord'] = { ...caseRecord, evidence: { snapshots: [{ halted: true }] } };
const file = (name: string) => ({ handle: name, key: name, name, modifiedAt: '' });
const saved = { caseRecord, caseCabinet: cabinet, cabinet };

/** What is unsaved when these files stand behind the document. */
const of = (open: { readonly case?: boolean; readonly cabinet?: boolean }, part: Partial<Part>) =>
  unsavedParts({
    cabinet,
    caseRecord,
    saved,
    files: { case: open.case ? file('a.case.json') : null, cabinet: open.cabinet ? file('a.cabinet.json') : null } as Part['files'],
    ...part,
  });

describe('what is unsaved', () => {
  it('should be nothing where nothing was done, and where what was done was taken back', () => {
    for (const open of [{}, { case: true }, { cabinet: true }, { case: true, cabinet: true }]) {
      expect(of(open, {})).toEqual({ case: false, cabinet: false });
      expect(of(open, { cabinet: structuredClone(cabinet), caseRecord: structuredClone(caseRecord) })).toEqual({
        case: false,
        cabinet: false,
      });
    }
  });

  it('should be the case, which carries its cabinet, where the case has a file', () => {
    expect(of({ case: true }, { caseRecord: answered })).toEqual({ case: true, cabinet: false });
    expect(of({ case: true }, { cabinet: changed })).toEqual({ case: true, cabinet: false });
  });

  it('should be both where both have files, each against its own', () => {
    expect(of({ case: true, cabinet: true }, { cabinet: changed })).toEqual({ case: true, cabinet: true });
    expect(of({ case: true, cabinet: true }, { cabinet: changed, saved: { ...saved, cabinet: changed } })).toEqual({
      case: true,
      cabinet: false,
    });
    expect(of({ case: true, cabinet: true }, { cabinet: changed, saved: { ...saved, caseCabinet: changed } })).toEqual({
      case: false,
      cabinet: true,
    });
  });

  it('should be the cabinet where it alone has a file, and whatever was entered beside it', () => {
    expect(of({ cabinet: true }, { cabinet: changed })).toEqual({ case: false, cabinet: true });
    expect(of({ cabinet: true }, { caseRecord: answered })).toEqual({ case: true, cabinet: false });
    expect(of({}, { cabinet: changed })).toEqual({ case: false, cabinet: true });
  });
});
