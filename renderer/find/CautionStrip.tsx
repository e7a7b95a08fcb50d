import { windowTexts } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import './caution.css';

const words = windowTexts.cautions;

/** The cautions that hold while one looks at a halted cabinet. It stays at the lower edge and never scrolls. */
export function CautionStrip() {
  return (
    <section id="caution" className="caution" aria-label={words.region}>
      <b className="caution-head">
        <Sign name="danger" size={18} />
        {words.head}
      </b>
      <ul>
        <li className="must">
          <Sign name="must" size={15} />
          <span>
            <b>{words.noteFirst}</b> {words.noteFirstWhy}
          </span>
        </li>
        <li className="must">
          <Sign name="must" size={15} />
          <span>{words.dcLink}</span>
        </li>
        <li className="never">
          <Sign name="never" size={15} />
          <span>{words.fibre}</span>
        </li>
      </ul>
      <span className="defer">{words.defer}</span>
    </section>
  );
}
