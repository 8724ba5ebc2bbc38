import type { Actor } from '@fryward/room'

type Person = Extract<Actor, { kind: 'person' }>
type Recent = { person: Person; untilMs: number }

// A page asks for several things at once: who asks is looked up once for all of them. What somebody may do is not
// remembered here; the role is read with every request.
const remembersMs = 10_000
const mostRemembered = 2000

/** Who a cookie belonged to within the last ten seconds, in this process. */
export function recentSessions(clockMs: () => number = Date.now) {
  const recent = new Map<string, Recent>()
  return {
    find(cookie: string): Person | null {
      const found = recent.get(cookie)
      if (!found) return null
      if (found.untilMs > clockMs()) return found.person
      recent.delete(cookie)
      return null
    },
    keep(cookie: string, person: Person): void {
      const oldest = recent.keys().next()
      if (recent.size >= mostRemembered && !oldest.done) recent.delete(oldest.value)
      recent.set(cookie, { person, untilMs: clockMs() + remembersMs })
    },
    forget(cookie: string): void {
      recent.delete(cookie)
    },
  }
}
