import { makeFileName } from '../../base/index.ts';
import { checkCabinet } from '../../cabinet/index.ts';
import { type LabelSheetName, labelSheets, type MadeDocument, makeDocument } from '../../documents/index.ts';
import { makeNames, type PaperKind, paperKinds, paperKindWords, paperWords, printWords } from '../../messages/index.ts';
import { type PaperSize, paperNames, writeHtml, writeSvg } from '../../paper/index.ts';
import { writePdf } from '../../pdf/index.ts';
import type { CabinetContent } from '../../schema/index.ts';
import { type JsonProblem, jsonCabinet, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed, firstValue } from '../command.ts';
import { baseOf, folderOf, writeOut } from '../files.ts';
import type { ExitCode, Io } from '../io.ts';
import type { GivenArguments } from '../options.ts';
import { type Asked, makeUsageProblem, readCabinetOrCase, readOption, readOptions, understood } from '../read/index.ts';
import { formatTable } from '../table.ts';

interface Wanted {
  readonly kinds: readonly PaperKind[];
  readonly size: PaperSize;
  readonly labels: LabelSheetName;
  readonly form: 'pdf' | 'svg' | 'html';
  readonly together: boolean;
  readonly into: string | null;
  readonly replace: boolean;
  readonly progress: boolean;
}

/** A document as it was written. */
interface Printed {
  readonly file: string;
  readonly document: PaperKind;
  readonly title: string;
  readonly pages: number;
  readonly written: readonly string[];
}

/** `linkwright print FILE…`: the documents of cabinets. */
export const print: Command = {
  options: {
    what: { value: true, many: true },
    paper: { value: true },
    labels: { value: true },
    as: { value: true },
    together: {},
    design: { value: true },
    into: { value: true },
    replace: {},
    progress: {},
    json: {},
  },
  async run(io, given) {
    if (given.arguments.length === 0) return failed(2, [jsonUsageProblem(makeUsageProblem('file-argument-missing', { command: 'print' }))]);
    const wanted = readWanted(io, given);
    if (!wanted.ok) return failed(2, wanted.problems.map(jsonUsageProblem));
    const cabinets = await readCabinets(io, given.arguments, firstValue(given, 'design'));
    if (!cabinets.ok) return failed(3, cabinets.problems);
    const problems: JsonProblem[] = [];
    const printed: Printed[] = [];
    for (const [index, { file, content }] of cabinets.value.entries()) {
      if (wanted.value.progress) await io.err(printWords.progress(file, index + 1, cabinets.value.length));
      printed.push(...(await printCabinet(io, file, content, wanted.value, problems)));
    }
    if (printed.length === 0 && problems.length === 0) {
      const what = wanted.value.kinds.map((kind) => paperKindWords[kind].label).join(', ');
      problems.push(jsonUsageProblem(makeUsageProblem('nothing-to-print', { what })));
    }
    const isUnwritten = problems.some(({ code }) => code === 'file-not-writable');
    const exit: ExitCode = isUnwritten ? 3 : problems.length > 0 ? 1 : 0;
    return {
      exit,
      problems,
      json: { cabinets: cabinets.value.map(({ file, content }) => ({ file, cabinet: jsonCabinet(content) })), documents: printed },
      text: formatTable(
        [{ head: printWords.document }, { head: printWords.pages, align: 'right' }, { head: printWords.file, grow: true }],
        printed.map(({ title, pages, written }) => [
          title,
          String(pages),
          written.length > 2 ? `${written[0]} … ${written.at(-1)}` : written.join(', '),
        ]),
        io.columns,
      ),
    };
  },
};

function readWanted(io: Io, given: GivenArguments): Asked<Wanted> {
  const kinds = readOptions(given, 'what', paperKinds);
  const size = readOption(given, 'paper', paperNames as readonly [PaperSize, ...PaperSize[]]); // there are three
  const labels = readOption(given, 'labels', Object.keys(labelSheets) as [LabelSheetName, ...LabelSheetName[]]); // the keys are the names
  const form = readOption(given, 'as', ['pdf', 'svg', 'html']);
  if (!kinds.ok) return kinds;
  if (!size.ok) return size;
  if (!labels.ok) return labels;
  if (!form.ok) return form;
  return understood({
    // Photos only on request: they are large.
    kinds: kinds.value.length > 0 ? kinds.value : paperKinds.filter((kind) => kind !== 'photos'),
    size: size.value,
    labels: labels.value,
    form: form.value,
    together: given.options.has('together'),
    into: firstValue(given, 'into') ?? null,
    replace: given.options.has('replace'),
    progress: given.options.has('progress') || io.isWatched,
  });
}

type Cabinets =
  | { readonly ok: true; readonly value: readonly { readonly file: string; readonly content: CabinetContent }[] }
  | { readonly ok: false; readonly problems: readonly JsonProblem[] };

async function readCabinets(io: Io, files: readonly string[], design: string | undefined): Promise<Cabinets> {
  const problems: JsonProblem[] = [];
  const cabinets: { file: string; content: CabinetContent }[] = [];
  for (const file of files) {
    const read = await readCabinetOrCase(io, file);
    if (!read.ok) problems.push(...read.problems);
    else if (design === undefined || read.value.content.basedOn?.design === design) cabinets.push({ file, content: read.value.content });
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: cabinets };
}

async function printCabinet(
  io: Io,
  file: string,
  content: CabinetContent,
  wanted: Wanted,
  problems: JsonProblem[],
): Promise<readonly Printed[]> {
  const { topology, cabinet } = checkCabinet(content);
  const source = { topology, cabinet, names: makeNames(topology), date: io.now().toISOString().slice(0, 10) };
  const made: { kind: PaperKind; document: MadeDocument }[] = [];
  for (const kind of wanted.kinds) {
    if (wanted.progress) await io.err(printWords.making(paperKindWords[kind].label));
    const documents = makeDocument(source, kind, wanted.size, wanted.labels);
    if (documents.length === 0 && kind === 'door-sheet' && cabinet === null) {
      problems.push({ ...jsonUsageProblem(makeUsageProblem('document-left-out', { document: paperKindWords[kind].label, file })), file });
    }
    made.push(...documents.map((document) => ({ kind, document })));
  }
  const path = (id: string, ending: string) =>
    `${wanted.into === null ? folderOf(file) : `${wanted.into.replace(/[/\\]$/, '')}/`}${makeFileName(`${baseOf(file)}.${id}`, ending, 'document')}`;
  const writer = new Writer(io, wanted, problems);
  if (wanted.form === 'pdf' && wanted.together && made.length > 0) {
    const target = path('documents', '.pdf');
    const isWritten = await writer.pdf(
      target,
      content.name,
      made.map(({ document }) => document),
    );
    return isWritten ? made.map(({ kind, document }) => printedOf(file, kind, document, [target])) : [];
  }
  const printed: Printed[] = [];
  for (const { kind, document } of made) {
    const written = await writer.document(document, path);
    if (written.length > 0) printed.push(printedOf(file, kind, document, written));
  }
  return printed;
}

const printedOf = (file: string, kind: PaperKind, { title, pages }: MadeDocument, written: readonly string[]): Printed => ({
  file,
  document: kind,
  title,
  pages: pages.length,
  written,
});

/** Writes documents, and notes what went wrong. */
class Writer {
  constructor(
    private readonly io: Io,
    private readonly wanted: Wanted,
    private readonly problems: JsonProblem[],
  ) {}

  /** The files that were written for one document. */
  async document(document: MadeDocument, path: (id: string, ending: string) => string): Promise<readonly string[]> {
    const { form } = this.wanted;
    if (form === 'pdf') {
      const target = path(document.id, '.pdf');
      return (await this.pdf(target, document.title, [document])) ? [target] : [];
    }
    if (form === 'html') {
      if (document.paper === null) return [];
      const target = path(document.id, '.html');
      return (await this.text(target, writeHtml(document.paper, { language: paperWords.language }))) ? [target] : [];
    }
    const written: string[] = [];
    for (const [index, page] of document.pages.entries()) {
      const target = path(document.id, document.pages.length === 1 ? '.svg' : `.${index + 1}.svg`);
      if (await this.text(target, writeSvg(page, document.title))) written.push(target);
    }
    return written;
  }

  async pdf(target: string, title: string, documents: readonly MadeDocument[]): Promise<boolean> {
    const pdf = await writePdf(documents, { title, language: paperWords.language, madeAt: this.io.now() });
    if (pdf === null) return false;
    if (pdf.missingSigns.length > 0) {
      this.problems.push({ ...jsonUsageProblem(makeUsageProblem('signs-missing', { signs: pdf.missingSigns.join(' ') })), file: target });
    }
    for (const picture of pdf.missingPictures) {
      this.problems.push({ ...jsonUsageProblem(makeUsageProblem('picture-missing', { picture })), file: target });
    }
    return this.write(target, pdf.bytes);
  }

  private text(target: string, text: string): Promise<boolean> {
    return this.write(target, new TextEncoder().encode(text));
  }

  private async write(target: string, bytes: Uint8Array): Promise<boolean> {
    const problem = await writeOut(this.io, target, bytes, this.wanted.replace);
    if (problem !== null) this.problems.push(problem);
    return problem === null;
  }
}
