// Two functions of zod that nothing here calls reach through whole namespaces (`core.regexes[…]`, `core.util.…`), and the
// bundler then keeps all of both in every page's script. A loader for next.config.mjs: without those two they go.
const unreached = [
  [/export function hash\(alg, params\) \{[\s\S]*?\n\}\n/, ''],
  [/core\.util\.constantCatch\(/, 'util.constantCatch('],
]

module.exports = function leaveOut(source) {
  return unreached.reduce((text, [pattern, put]) => {
    if (!pattern.test(text))
      throw new Error(`zod has changed: ${pattern} is not in ${this.resourcePath}; see zod-unreached.cjs`)
    return text.replace(pattern, put)
  }, source)
}
