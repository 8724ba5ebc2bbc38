import type { Rule, Source } from '@fryward/shared'
import styles from './rules.module.css'

const kindLabels = {
  published: 'published',
  common_practice: 'common practice',
  from_memory: 'from memory',
  assumption: 'assumption',
} as const satisfies Record<Source['kind'], string>

/** "published, from memory": what the numbers of a rule stand on, before anybody unfolds it. */
const sayKinds = (rule: Rule) => [...new Set(rule.parameters.map((one) => kindLabels[one.source.kind]))].join(', ')

/** Where each number comes from; "from memory" is said, never dressed up. */
export function RuleSources({ rule }: { rule: Rule }) {
  if (rule.parameters.length === 0) return null
  return (
    <details>
      <summary className={styles.summary}>Where the numbers come from: {sayKinds(rule)}</summary>
      <ul className={styles.sources}>
        {rule.parameters.map((parameter) => (
          <li key={parameter.name}>
            <strong>{parameter.label}:</strong> {kindLabels[parameter.source.kind]}
            {parameter.source.citation ? `. ${parameter.source.citation}` : ''}
            {parameter.value !== parameter.default && ` (default ${String(parameter.default)})`}
          </li>
        ))}
      </ul>
    </details>
  )
}
