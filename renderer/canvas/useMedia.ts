import { useEffect, useState } from 'react';

/** Windows below this width have narrower modules and smaller words. */
export const narrowWindow = '(max-width: 1400px)';

/** Windows below this height have tighter panes, as in the style sheets. */
export const lowWindow = '(max-height: 800px)';

/** Whether a media query holds at the moment. */
export function useMedia(query: string): boolean {
  const [matches, setMatches] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const follow = () => setMatches(list.matches);
    follow();
    list.addEventListener('change', follow);
    return () => list.removeEventListener('change', follow);
  }, [query]);
  return matches;
}
