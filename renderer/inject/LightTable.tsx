import { useEffect, useRef } from 'react';
import { injectWords, meaningWords, windowTexts } from '../../engine/messages/index.ts';
import { useMedia } from '../canvas/useMedia.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';
import { namesOf, shortUnitName } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { type InjectModel, selectInjectModel } from './injectModel.ts';
import { hopOfCell, type LightColumn, type LightRow, lightRows, settledUnits } from './lightWay.ts';
import './light.css';

/** From this many columns on there is room for marks only; from that many for narrow ones, so that sixty units are seen at once. */
const denseFrom = { narrow: 12, wide: 15 } as const;
const tightFrom = 40;
/** In windows below this width the words of a dozen columns have no room. */
const fewWords = '(max-width: 1700px)';

/** The light of one chain as a table: what each port hears and sends, as far as the steps have come, and what follows from it. */
export function LightTable() {
  const model = useApp(selectInjectModel);
  const frame = useRef<HTMLElement>(null);
  const narrow = useMedia(fewWords);
  const hopNow = model?.hop ?? null;
  useEffect(() => {
    if (hopNow !== null && frame.current) bringHereIntoView(frame.current);
  }, [hopNow]);
  if (!model || model.chain === null) return null;
  const names = namesOf(model.cabinet);
  const { light, hop, hops } = model;
  const dense = light.length >= denseFrom[narrow ? 'narrow' : 'wide'];
  const settled = hop === null ? null : settledUnits(hops, hop);
  return (
    <section
      id="grid"
      className={`light-table${dense ? ' dense' : ''}${light.length >= tightFrom ? ' tight' : ''}`}
      aria-label={injectWords.lightRegion}
      tabIndex={-1}
    >
      <div className="section-head">
        <h2>
          {injectWords.light(names.chain(model.chain))}{' '}
          <small>{hop === null ? injectWords.wholeWay : injectWords.after(hop + 1, hops.length)}</small>
        </h2>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard. */}
      <section ref={frame} className="light-scroll" aria-label={injectWords.light(names.chain(model.chain))} tabIndex={0}>
        {/* The type of styles knows no custom properties. */}
        <table style={{ '--columns': light.length } as React.CSSProperties}>
          <caption className="screen-reader">{injectWords.lightCaption}</caption>
          <thead>
            <tr>
              <td />
              {light.map((column, position) => (
                <Head key={column.unit ?? 'controller'} column={column} position={position} model={model} dense={dense} />
              ))}
            </tr>
          </thead>
          <tbody>
            {lightRows.map((row) => (
              <tr key={row}>
                <th scope="row">{injectWords.rows[row]}</th>
                {light.map((column, position) => (
                  <Cell
                    key={column.unit ?? 'controller'}
                    column={column}
                    row={row}
                    at={hopOfCell(row, position, light.length - 1)}
                    hop={hop}
                    here={isHere(model, column)}
                    dense={dense}
                  />
                ))}
              </tr>
            ))}
            <tr className="so-it-shows">
              <th scope="row">{injectWords.soItShows}</th>
              {light.map((column) => (
                <Shown
                  key={column.unit ?? 'controller'}
                  column={column}
                  model={model}
                  waiting={isWaiting(column, settled, model)}
                  dense={dense}
                />
              ))}
            </tr>
          </tbody>
        </table>
      </section>
    </section>
  );
}

/** Scrolls the table sideways to where the light has come. `scrollIntoView` would also move the place from which Tab goes on. */
function bringHereIntoView(frame: HTMLElement): void {
  const here = frame.querySelector<HTMLElement>('thead .here');
  const rows = frame.querySelector<HTMLElement>('tbody th');
  if (!here || !rows) return;
  const { left, right } = here.getBoundingClientRect();
  const from = rows.getBoundingClientRect().right;
  const to = frame.getBoundingClientRect().right;
  if (left < from) frame.scrollLeft -= from - left;
  else if (right > to) frame.scrollLeft += right - to;
}

function isWaiting({ unit }: LightColumn, settled: ReadonlySet<string> | null, { hop, hops }: InjectModel): boolean {
  if (settled === null) return false;
  return unit === null ? hop !== hops.length - 1 : !settled.has(unit);
}

/** The column of the unit that the light has just come to. */
function isHere({ hop, hops }: InjectModel, { unit }: LightColumn): boolean {
  const now = hop === null ? undefined : hops[hop];
  if (!now) return false;
  return now.kind === 'outbound' || now.kind === 'return' ? now.to === unit : unit === null;
}

function Head({
  column,
  position,
  model,
  dense,
}: {
  readonly column: LightColumn;
  readonly position: number;
  readonly model: InjectModel;
  readonly dense: boolean;
}) {
  const names = namesOf(model.cabinet);
  const name = column.unit === null ? names.controller() : names.unit(column.unit);
  const short =
    column.unit === null
      ? model.cabinet.content.controller?.designation.trim() || windowTexts.cabinet.controller
      : shortUnitName(model.cabinet, column.unit);
  const here = isHere(model, column);
  return (
    <th scope="col" className={here ? 'here' : ''} title={name}>
      {dense ? (
        <>
          <span className="screen-reader">{name}</span>
          <span aria-hidden="true">{position % 5 === 0 || position === 1 || here ? position : ''}</span>
        </>
      ) : (
        <span className="designation">{short}</span>
      )}
    </th>
  );
}

function Cell({
  column,
  row,
  at,
  hop,
  here,
  dense,
}: {
  readonly column: LightColumn;
  readonly row: LightRow;
  readonly at: number;
  readonly hop: number | null;
  readonly here: boolean;
  readonly dense: boolean;
}) {
  const value = column[row];
  const classes = `${here ? 'here ' : ''}${at === hop && value !== 'none' ? 'now' : ''}`;
  if (value === 'none') {
    return (
      <td className={classes}>
        <span className="screen-reader">{injectWords.cells.none}</span>
      </td>
    );
  }
  const shown = hop !== null && at > hop ? 'waiting' : value;
  return (
    <td className={classes}>
      <i className={`light-bar is-${shown}`} aria-hidden="true" />
      <span className={dense || shown === 'waiting' ? 'screen-reader' : ''}>{injectWords.cells[shown]}</span>
    </td>
  );
}

function Shown({
  column,
  model,
  waiting,
  dense,
}: {
  readonly column: LightColumn;
  readonly model: InjectModel;
  readonly waiting: boolean;
  readonly dense: boolean;
}) {
  const here = isHere(model, column) ? 'here' : '';
  if (waiting) {
    return (
      <td className={here}>
        <span className="so waiting">
          <span className={dense ? 'screen-reader' : ''}>{injectWords.notYet}</span>
        </span>
      </td>
    );
  }
  if (column.unit === null) {
    const { chain } = model;
    const report = chain === null ? undefined : model.simulation.reports.get(chain);
    return (
      <td className={here}>
        {chain !== null && report?.speaks && (
          <span className={`so${report.gap === 'none' ? '' : ' loss'}`} title={injectWords.reports}>
            {namesOf(model.cabinet).gap(chain, report.gap)}
          </span>
        )}
      </td>
    );
  }
  const meaning = model.simulation.displays.get(column.unit)?.meaning ?? 'quiet';
  return (
    <td className={here}>
      <span className={`so${meaning === 'quiet' ? '' : ' loss'}`}>
        <DisplayMark name={meaning} size={dense ? 14 : 17} />
        <span className={dense ? 'screen-reader' : ''}>{meaningWords[meaning].label}</span>
      </span>
    </td>
  );
}
