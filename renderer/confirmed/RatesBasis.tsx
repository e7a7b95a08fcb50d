import { rateTableWords, confirmedWords as words } from '../../engine/messages/index.ts';
import { selectFindModel } from '../find/findModel.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

/** On which rates the percentages stand, and the way to where they come from. Nothing where all are the cabinet's own. */
export function RatesBasis() {
  const dispatch = useDispatch();
  const basis = useApp((state) => {
    const note = selectFindModel(state).diagnosis?.notes.find(({ code }) => code === 'rates-assumed' || code === 'rates-sharpened');
    return note === undefined ? null : note.code === 'rates-sharpened' ? words.sharpenedAll(note.cases) : words.assumedAll;
  });
  if (basis === null) return null;
  return (
    <button type="button" className="text-button rates-basis" title={rateTableWords.title} onClick={() => dispatch('fault-rates')}>
      {basis}
    </button>
  );
}
