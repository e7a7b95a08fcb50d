import { type ReactNode, useState } from 'react';
import { appVersion } from '../../engine/base/index.ts';
import {
  cautionWords,
  glossary,
  type HelpTopic,
  helpTopics,
  meaningSetWords,
  meaningWords,
  startSentence,
  windowTexts,
  helpWords as words,
} from '../../engine/messages/index.ts';
import { displayMeanings } from '../../engine/schema/index.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';
import type { CommandId } from '../state/commands.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { DialogFrame } from './DialogFrame.tsx';
import { listKeys } from './listKeys.ts';
import { shortcutsOf, wordKeys } from './shortcuts.ts';
import './help.css';

/** One thing that the help says; `sign` stands before it. */
interface Entry {
  readonly head: string;
  readonly text: string;
  readonly sign?: ReactNode;
}

/** Entries of a topic under a head of their own, where it has several. */
interface Part {
  readonly head?: string;
  readonly entries: readonly Entry[];
  readonly as: 'steps' | 'terms' | 'keys';
}

const keyOf = (id: CommandId) => shortcutsOf(id).slice(0, 1).map(wordKeys).join();
const helpKeys = () => ({
  newCabinet: keyOf('new-cabinet'),
  walk: keyOf('walk-displays'),
  report: keyOf('enter-next-report'),
  next: keyOf('next-step'),
  simulate: keyOf('toggle-inject'),
  handBack: keyOf('hand-back'),
  draw: keyOf('go-draw'),
  practice: keyOf('go-practice'),
  sums: keyOf('toggle-sums'),
  documents: keyOf('show-documents'),
  projector: keyOf('practice-projector'),
});

function partsOf(topic: HelpTopic): readonly Part[] {
  const terms = (list: readonly { readonly label: string; readonly meaning: string }[]) =>
    list.map(({ label, meaning }) => ({
      head: startSentence(label),
      text: `${startSentence(meaning)}${/[.?]$/.test(meaning) ? '' : '.'}`,
    }));
  switch (topic) {
    case 'technician':
    case 'builder':
    case 'instructor':
      return [{ as: 'steps', entries: words.steps[topic](helpKeys()) }];
    case 'displays':
      return [
        {
          as: 'terms',
          entries: [
            ...displayMeanings.map((one) => ({ ...terms([meaningWords[one]])[0], sign: <DisplayMark name={one} /> }) as Entry),
            ...terms(Object.values(meaningSetWords)),
          ],
        },
      ];
    case 'cautions':
      return [{ as: 'terms', entries: terms(Object.values(cautionWords)) }];
    case 'keys':
      return listKeys().map(({ head, keys }) => ({ as: 'keys', head, entries: keys.map(([key, text]) => ({ head: key, text })) }));
    case 'glossary':
      return [{ as: 'terms', entries: terms(glossary) }];
    case 'about': {
      const { about } = windowTexts;
      const own = { head: windowTexts.productName, text: `${about.version(appVersion)}. ${about.what} ${about.offline} ${about.licence}` };
      return [{ as: 'terms', entries: [own, ...words.about] }];
    }
  }
}

/** The help: topics beside what they say, or what was searched for in all of them. */
export function HelpDialog() {
  const topic = useApp((state) => state.help);
  const dispatch = useDispatch();
  const [sought, setSought] = useState('');
  if (topic === null) return null;
  const close = () => {
    setSought('');
    dispatch('help', { topic: null });
  };
  const asked = sought.trim().toLowerCase().split(/\s+/).filter(Boolean);
  const matches = ({ head, text }: Entry) => asked.every((word) => `${head} ${text}`.toLowerCase().includes(word));
  const found = asked.length === 0 ? null : helpTopics.map((one) => ({ topic: one, parts: sift(partsOf(one), matches) }));
  const shown = found?.filter(({ parts }) => parts.length > 0) ?? [{ topic, parts: partsOf(topic) }];
  const count = shown.reduce((sum, { parts }) => sum + parts.reduce((all, { entries }) => all + entries.length, 0), 0);
  return (
    <DialogFrame
      title={words.title}
      close={words.close}
      onClose={close}
      name="help"
      tools={
        <input
          type="search"
          className="help-search"
          aria-label={words.search}
          placeholder={words.search}
          value={sought}
          onChange={({ target }) => setSought(target.value)}
        />
      }
    >
      <nav aria-label={words.topics}>
        {helpTopics.map((one) => (
          <button
            key={one}
            type="button"
            aria-current={found === null && one === topic ? 'page' : undefined}
            onClick={() => {
              setSought('');
              dispatch('help', { topic: one });
            }}
          >
            {words.topic[one]}
          </button>
        ))}
      </nav>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section key={found === null ? topic : 'found'} className="help-text" tabIndex={0} aria-label={words.title}>
        <p role="status" className="help-count">
          {found !== null && words.found(count)}
        </p>
        {shown.map(({ topic: one, parts }) => (
          <Topic key={one} topic={one} parts={parts} />
        ))}
      </section>
    </DialogFrame>
  );
}

function sift(parts: readonly Part[], matches: (entry: Entry) => boolean): readonly Part[] {
  return parts.map((part) => ({ ...part, entries: part.entries.filter(matches) })).filter(({ entries }) => entries.length > 0);
}

function Topic({ topic, parts }: { readonly topic: HelpTopic; readonly parts: readonly Part[] }) {
  return (
    <>
      <h3>{words.topic[topic]}</h3>
      <p className="help-intro">{words.intro[topic]}</p>
      <div className={topic === 'keys' ? 'help-columns' : undefined}>
        {parts.map(({ head, entries, as }) => (
          <section key={head ?? ''}>
            {head !== undefined && <h4>{head}</h4>}
            {as === 'steps' ? (
              <ol className="help-steps">
                {entries.map((one) => (
                  <li key={one.head}>
                    <b>{one.head}.</b> {one.text}
                  </li>
                ))}
              </ol>
            ) : (
              <dl className={`help-${as}`}>
                {entries.map((one) => (
                  <div key={`${one.head} ${one.text}`}>
                    <dt>
                      {one.sign} {as === 'keys' ? <kbd>{one.head}</kbd> : one.head}
                    </dt>
                    <dd>{one.text}</dd>
                  </div>
                ))}
              </dl>
            )}
          </section>
        ))}
      </div>
      {(topic === 'cautions' || topic === 'technician') && <p className="help-care">{words.defer}</p>}
    </>
  );
}
