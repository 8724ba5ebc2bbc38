/** Only a path of this site: a link must not sign somebody in and send them elsewhere. */
export const toSafePath = (next: string | null): string =>
  // Browsers read `//host` and `/\host` as another site.
  next?.startsWith('/') && !next.startsWith('//') && !next.includes('\\') ? next : '/rooms'
