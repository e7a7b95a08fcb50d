import { describe, expect, it } from 'vitest';
import { parseExerciseFile, serializeResult } from '../../engine/cabinet/index.ts';
import { debrief, makeResult } from '../../engine/exercise/index.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { jsonOf, linkwright } from './runLinkwright.ts';

const ready = 'sample-cabinets/ready-02-neighbours.exercise.json';
const three = 'sample-cabinets/three-units.cabinet.json';

const result = (code: string) => {
  const { game, answer, exercise } = readyGame('neighbours');
  const looked = debrief(game, answer, [{ do: 'give-up' }]);
  if (looked === null) throw new Error('not ended');
  return serializeResult(makeResult(exercise, [{ do: 'give-up' }], looked, { code }));
};

const textOf = ({ written }: Awaited<ReturnType<typeof linkwright>>, file: string) => new TextDecoder('latin1').decode(written.get(file));

describe('linkwright exercise', () => {
  it('should make an exercise whose answer only its passphrase opens', async () => {
    const made = await linkwright(['exercise', 'make', three, '--fault', 'cable:-WH2:cut', '--passphrase', 'kiln and quartz']);
    expect(made).toMatchObject({ exit: 0, err: '' });
    expect(parseExerciseFile(made.out).ok).toBe(true);
    const files = { 'x.json': made.out };
    expect((await linkwright(['exercise', 'check', 'x.json', '--passphrase', 'kiln and quartz'], files)).exit).toBe(0);
    const closed = await linkwright(['exercise', 'sheet', 'x.json', '--answer'], files);
    expect(closed.exit).toBe(1);
    expect(closed.out + closed.err).not.toContain('is cut');
    expect((await linkwright(['exercise', 'check', 'x.json', '--passphrase', 'kilnandquartz'], files)).exit).toBe(1);
  }, 60_000);

  it('should take from the command line what an instructor decides', async () => {
    const made = await linkwright([
      ...[
        'exercise',
        'make',
        three,
        '--fault',
        'cable:-WH2:cut',
        '--passphrase',
        'kiln and quartz',
        '--name',
        'Night shift',
        '--task',
        'It halted.',
      ],
      ...['--known', '-TB1', '--known', 'report:1', '--circumstance', 'work-at-door:-WH2', '--times', '2,8.5,5'],
      ...['--most-minutes', '90', '--most-steps', '12', '--hint', '3=Look at both ends', '--hint', '0=a=b'],
    ]);
    expect(made).toMatchObject({ exit: 0, err: '' });
    const parsed = parseExerciseFile(made.out);
    expect(parsed).toMatchObject({
      ok: true,
      value: {
        name: 'Night shift',
        task: 'It halted.',
        given: { displays: [{ unit: 'TB1' }], reports: [{}], circumstances: [{ kind: 'work-at-door' }] },
        times: { openMinutes: 2, isolateMinutes: 8.5, bootMinutes: 5 },
        limits: { minutes: 90, steps: 12 },
        hints: [
          { text: 'Look at both ends', minutes: 3 },
          { text: 'a=b', minutes: 0 },
        ],
      },
    });
  }, 60_000);

  it('should refuse an option of another action, and what it cannot read, without making anything', async () => {
    const make = ['exercise', 'make', three, '--fault', 'cable:-WH2:cut', '--passphrase', 'kiln and quartz'];
    for (const [wrong, said] of [
      [['--level', '3'], '--level goes only with exercise generate'],
      [['--csv'], '--csv goes only with exercise class'],
      [['--times', '2,8'], '“2,8” is not three numbers of minutes'],
      [['--hint', 'no price'], '“no price” is no hint with its price'],
      [['--known', 'TB99'], 'TB99'],
      [['--most-steps', '1.5'], '--most-steps'],
    ] as const) {
      const ran = await linkwright([...make, ...wrong]);
      expect(ran).toMatchObject({ exit: 2, out: '' });
      expect(ran.err).toContain(said);
    }
    expect((await linkwright(['exercise', 'check', ready, '--fault', 'cable:-WH2:cut'])).err).toContain('goes only with exercise make');
  });

  it('should write the exercise and its answer sheet as files of their own', async () => {
    const printed = await linkwright(['exercise', 'sheet', ready, '--answer', '--as', 'html', '--into', 'prints']);
    expect(printed).toMatchObject({ exit: 0, err: '' });
    const [sheet, answer] = ['exercise', 'answer'].map((id) => textOf(printed, `prints/ready-02-neighbours.${id}.html`));
    expect(answer).toContain('-WH3 is cut');
    expect(sheet).not.toContain('is cut');
    const pdf = await linkwright(['exercise', 'sheet', ready, '--as', 'pdf']);
    expect(textOf(pdf, 'sample-cabinets/ready-02-neighbours.exercise.pdf').slice(0, 5)).toBe('%PDF-');
    expect((await linkwright(['exercise', 'sheet', ready, '--as', 'svg'])).exit).toBe(2);
  });

  it('should generate the same exercise from the same seed', async () => {
    const args = ['exercise', 'generate', three, '--seed', '5', '--kind', 'neighbours', '--passphrase', 'kiln and quartz'];
    const plain = (text: string) => text.replace(/"sealed": "[^"]*"/, '');
    const first = plain((await linkwright(args)).out);
    expect(plain((await linkwright(args)).out)).toBe(first);
    // Neither the seed nor what was drawn from it stands in the open, and without the passphrase it leads elsewhere.
    expect(first).not.toMatch(/"seed"/);
    expect(first).toMatch(/"id": "g1-neighbours-[0-9a-f]{8}"/);
    expect(plain((await linkwright([...args.slice(0, -1), 'another good one'])).out)).not.toBe(first);
  }, 60_000);

  it('should refuse a passphrase that is soon guessed, and say why', async () => {
    const refused = await linkwright(['exercise', 'make', three, '--fault', 'cable:-WH2:cut', '--passphrase', 'x']);
    expect(refused.exit).toBe(2);
    expect(refused.err.replace(/\s+/g, ' ')).toContain('1 character: a program that guesses finds it within a minute');
  });

  it('should give the answer away by no command without the passphrase', async () => {
    const made = await linkwright(['exercise', 'make', three, '--fault', 'cable:-WH2:cut', '--passphrase', 'kiln and quartz']);
    const files = { 'x.exercise.json': made.out, 'x.cabinet.json': made.out };
    const { sealed } = JSON.parse(made.out).content;
    for (const args of [
      ['check', 'x.cabinet.json'],
      ['simulate', 'x.exercise.json'],
      ['diagnose', 'x.exercise.json'],
      ['next', 'x.exercise.json'],
      ['print', 'x.exercise.json', '--into', 'out'],
      ['compare', 'x.exercise.json', three],
      ['cases', 'x.exercise.json'],
      ['export', 'x.exercise.json'],
      ['exercise', 'check', 'x.exercise.json', '--json'],
      ['exercise', 'sheet', 'x.exercise.json'],
      ['exercise', 'sheet', 'x.exercise.json', '--answer'],
      ['exercise', 'sheet', 'x.exercise.json', '--answer', '--passphrase', 'quillmere'],
    ]) {
      const { out, err, written } = await linkwright(args, files);
      const all = [out, err, ...[...written.values()].map((bytes) => new TextDecoder('latin1').decode(bytes))].join('\n');
      expect(all, args.join(' ')).not.toMatch(/WH2 is cut|is cut|"faults":\s*\[/);
      expect(all, args.join(' ')).not.toContain(sealed.slice(40, 100));
    }
  }, 60_000);

  it('should refuse a passphrase that is missing, and an action that is not known', async () => {
    expect((await linkwright(['exercise', 'make', three, '--fault', 'cable:-WH2:cut'])).exit).toBe(2);
    expect((await linkwright(['exercise', 'mak', three])).err).toContain('make');
  });

  it('should make a table of a class, name what was changed, and write CSV', async () => {
    const files = { 'a.json': result('b2'), 'b.json': result('a1'), 'c.json': result('c3').replace('"minutes": 0', '"minutes": 1') };
    const table = await linkwright(['exercise', 'class', 'a.json', 'b.json', 'c.json', '--json'], files);
    expect(table.exit).toBe(3);
    expect(jsonOf(table)).toMatchObject({
      rows: [{ code: 'a1', solved: false }, { code: 'b2' }],
      problems: [{ code: 'result-changed', file: 'c.json' }],
    });
    const csv = await linkwright(['exercise', 'class', 'a.json', 'b.json', '--csv'], files);
    expect(csv.out.split('\r\n').map((line) => line.split(',')[0])).toEqual(['Code', 'a1', 'b2', '']);
  });

  it('should count a play once that stands in two files, and say so', async () => {
    const files = { 'a.json': result('b2'), 'copy of a.json': result('b2'), 'b.json': result('a1') };
    const table = await linkwright(['exercise', 'class', 'a.json', 'b.json', 'copy of a.json', '--json'], files);
    expect(table.exit).toBe(0);
    expect((jsonOf(table)['rows'] as unknown[]).length).toBe(2);
    expect(table.err.replace(/\s+/g, ' ')).toContain('copy of a.json is the same play as a.json. It is counted once, under the code “b2”.');
  });

  it('should delete results only, and only when that is confirmed', async () => {
    const files = { 'a.json': result('b2'), 'other.json': '{}' };
    const removed: string[] = [];
    expect((await linkwright(['exercise', 'delete', 'a.json'], files, 100, removed)).exit).toBe(2);
    const ran = await linkwright(['exercise', 'delete', 'a.json', 'other.json', '--yes'], files, 100, removed);
    expect(ran.exit).toBe(3);
    expect(removed).toEqual(['a.json']);
  });

  it('should tell more of a ready exercise with its answer', async () => {
    const sheet = await linkwright(['exercise', 'sheet', ready, '--answer']);
    expect(sheet.out).toContain('Cable -WH3 is cut');
    expect((await linkwright(['exercise', 'sheet', ready])).out).not.toContain('is cut');
  }, 30_000);
});
