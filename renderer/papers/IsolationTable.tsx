import { isolationWords, wordIsolation, papersWords as words } from '../../engine/messages/index.ts';
import type { IsolationFigures } from '../../engine/patterns/index.ts';

/** How well the cabinet isolates, beside its door sheet. */
export function IsolationTable({ figures }: { readonly figures: IsolationFigures }) {
  const rows = [figures.displays, figures.displaysAndReport, figures.afterSwitchingOff];
  return (
    <section className="isolation">
      <h3>{words.isolation}</h3>
      <table>
        <thead>
          <tr>
            {isolationWords.heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={isolationWords.seenBy[index]}>
              <th scope="row">{isolationWords.seenBy[index]}</th>
              {wordIsolation(row).map((cell, column) => (
                <td key={isolationWords.heads[column + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="papers-note">{isolationWords.note}</p>
    </section>
  );
}
