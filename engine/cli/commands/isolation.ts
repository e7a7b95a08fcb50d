import { isolationWords, wordIsolation } from '../../messages/index.ts';
import { isolationFigures } from '../../patterns/index.ts';
import { jsonCabinet, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed } from '../command.ts';
import { makeSound, makeUsageProblem, readCabinetOrCase } from '../read/index.ts';
import { wordRemarks } from '../show/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

/** `linkwright isolation FILE`: how well a cabinet tells its single faults apart. */
export const isolation: Command = {
  options: { json: {} },
  async run(io, given) {
    const [file, unwanted] = given.arguments;
    if (file === undefined) return failed(2, [jsonUsageProblem(makeUsageProblem('file-argument-missing', { command: 'isolation' }))]);
    if (unwanted !== undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'isolation' }))]);
    }
    const read = await readCabinetOrCase(io, file);
    if (!read.ok) return failed(3, read.problems);
    const sound = makeSound(read.value.content, file);
    if (!sound.ok) return failed(1, sound.problems);
    const figures = isolationFigures(sound.value.cabinet);
    const rows = [figures.displays, figures.displaysAndReport, figures.afterSwitchingOff];
    const { heads, seenBy, note } = isolationWords;
    return {
      exit: 0,
      problems: wordRemarks(file, sound.value.remarks),
      json: { cabinet: jsonCabinet(read.value.content), isolation: figures },
      text:
        formatTable(
          heads.map((head, index) => (index === 0 ? { head, grow: true as const } : { head, align: 'right' as const })),
          rows.map((row, index) => [seenBy[index] ?? '', ...wordIsolation(row)]),
          io.columns,
        ) + paragraph(note, io.columns),
    };
  },
};
