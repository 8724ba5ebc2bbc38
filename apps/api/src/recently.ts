type Recent<T> = { found: Promise<T>; untilMs: number }

// A page asks for several things at once: who asks is looked up once for all of them. A session that is ended, by whichever
// process, is over when this has passed. What somebody may do is not remembered here; the role is read with every request.
const remembersMs = 1000
const mostRemembered = 2000

/** Who a cookie or a token belonged to within the last second, in this process. */
export function recently<T>(clockMs: () => number = Date.now) {
  const recent = new Map<string, Recent<T>>()
  return {
    /** @param lookUp asked by the first of those who come at once; nobody is remembered whom it does not find. */
    find(cookie: string, lookUp: () => Promise<T>): Promise<T> {
      const known = recent.get(cookie)
      if (known && known.untilMs > clockMs()) return known.found
      recent.delete(cookie)
      const oldest = recent.keys().next()
      if (recent.size >= mostRemembered && !oldest.done) recent.delete(oldest.value)
      const asked = { found: lookUp(), untilMs: clockMs() + remembersMs }
      recent.set(cookie, asked)
      asked.found.catch(() => {
        if (recent.get(cookie) === asked) recent.delete(cookie)
      })
      return asked.found
    },
    /** What is under way is forgotten too: it may have been looked up before. */
    forgetAll: (): void => recent.clear(),
  }
}
