import { useState } from 'react';
import { sealSays, makeWords as words, wordWeakPassphrase } from '../../engine/messages/index.ts';
import { weighPassphrase } from '../../engine/sealing/index.ts';

/** A passphrase typed twice; null as long as there is none, it is soon guessed, or the two differ. It stays in the form and is kept nowhere. */
export function usePassphrase() {
  const [first, setFirst] = useState('');
  const [again, setAgain] = useState('');
  const strength = weighPassphrase(first);
  const trouble =
    first === ''
      ? words.passphraseMissing
      : !strength.isEnough
        ? wordWeakPassphrase(strength)
        : first === again
          ? null
          : words.passphraseDiffers;
  return { first, again, setFirst, setAgain, trouble, passphrase: trouble === null ? first : null };
}

/** The two fields, and in plain words what a passphrase protects against. */
export function Passphrase({ first, again, setFirst, setAgain, trouble }: ReturnType<typeof usePassphrase>) {
  return (
    <div className="passphrase">
      <label>
        {words.passphrase}
        <input type="password" autoComplete="new-password" value={first} onChange={({ target }) => setFirst(target.value)} />
      </label>
      <label>
        {words.passphraseAgain}
        <input type="password" autoComplete="new-password" value={again} onChange={({ target }) => setAgain(target.value)} />
      </label>
      <p className="passphrase-trouble" role="status">
        {trouble}
      </p>
      <p className="practice-small">
        {sealSays} {words.passphraseLost}
      </p>
    </div>
  );
}
