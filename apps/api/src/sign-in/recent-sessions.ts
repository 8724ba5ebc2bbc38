import type { Actor } from '@fryward/room'

type Person = Extract<Actor, { kind: 'person' }>
type Recent = { person: Promise<Person>; untilMs: number }

// A page asks for several things at once: who asks is looked up once for all of them. A session that is ended, by whichever
// process, is over when this has passed. What somebody may do is not remembered here; the role is read with every request.
const remembersMs = 1000
const mostRemembered = 2000

/** Who a cookie belonged to within the last second, in this process. */
export function recentSessions(clockMs: () => number = Date.now) {
  const recent = new Map<string, Recent>()
  return {
    /** @param lookUp asked by the first of those who come at once; nobody is remembered whom it does not find. */
    find(cookie: string, lookUp: () => Promise<Person>): Promise<Person> {
      const known = recent.get(cookie)
      if (known && known.untilMs > clockMs()) return known.person
      recent.delete(cookie)
      const oldest = recent.keys().next()
      if (recent.size >= mostRemembered && !oldest.done) recent.delete(oldest.value)
      const asked = { person: lookUp(), untilMs: clockMs() + remembersMs }
      recent.set(cookie, asked)
      asked.person.catch(() => {
        if (recent.get(cookie) === asked) recent.delete(cookie)
      })
      return asked.person
    },
    /** What is under way is forgotten too: it may have been looked up before. */
    forgetAll: (): void => recent.clear(),
  }
}
