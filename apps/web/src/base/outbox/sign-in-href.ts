/** To sign in and back to here. */
export function signInHref(): string {
  if (typeof window === 'undefined') return '/sign-in'
  return `/sign-in?next=${encodeURIComponent(`${window.location.pathname}${window.location.search}`)}`
}
