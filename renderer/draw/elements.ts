/** Id of the element of a cable, by which it is found to be focused. */
export function linkElementId(link: string): string {
  return `drawn-link-${link}`;
}
