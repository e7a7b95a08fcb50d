import { isolationWords, wordProbability, papersWords as words } from '../../engine/messages/index.ts';
import type { IsolationFigures } from '../../engine/patterns/index.ts';

/** How well the cabinet isolates, beside its door sheet. */
export function IsolationTable({ figures }: { readonly figures: IsolationFigures }) {
  const share = (value: number | null) => (value === null ? '–' : wordProbability(value));
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
          {rows.map(({ detected, isolated, meanParts }, index) => (
            <tr key={isolationWords.seenBy[index]}>
              <th scope="row">{isolationWords.seenBy[index]}</th>
              <td>{share(detected)}</td>
              <td>{share(isolated.one)}</td>
              <td>{share(isolated.two)}</td>
              <td>{share(isolated.three)}</td>
              <td>{meanParts === null ? '–' : meanParts.toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="papers-note">{isolationWords.note}</p>
    </section>
  );
}
