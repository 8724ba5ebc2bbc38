'use client'

import type { Because, Origin, Task } from '@fryward/shared'
import { namesItsHeads, quantityParts, sayDatesIn, sayMoment } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { Amount } from '@/base/quantities/Amount.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { whyOptions } from '@/parts/tasks/queries.ts'
import { useSubjectHref } from '@/parts/things/use-subject-href.ts'
import styles from './sheet.module.css'

const joinSigns = { times: '×', divided_by: '÷', plus: '+', minus: '−', equals: '=', and: '·' } as const
const joinWords = {
  times: 'times',
  divided_by: 'divided by',
  plus: 'plus',
  minus: 'minus',
  equals: 'makes',
  and: 'and',
} as const

/** Why this, why this much: each number with where it was read, tied to the one before. */
export function WhyChain({ task, now }: { task: Task; now: Date }) {
  const query = useQuery(whyOptions(useRoom().id, task.id))
  return (
    <section className={styles.why} aria-labelledby={`why-${task.id}`}>
      <h3 id={`why-${task.id}`}>Why this, why this much</h3>
      <Loaded query={query} skeleton={<Bones heights={[3, 3, 3]} />} what="Why this much">
        {({ because }) => (
          <ol className={styles.chain}>
            {because.map((link) => (
              <WhyLink key={`${link.label} ${JSON.stringify(link.quantity)} ${link.text}`} link={link} now={now} />
            ))}
          </ol>
        )}
      </Loaded>
      <p className={styles.soft}>
        Rule: <RuleLink ruleId={task.ruleId} title={task.ruleTitle} />
      </p>
    </section>
  )
}

function WhyLink({ link, now }: { link: Because; now: Date }) {
  const voice = useVoice()
  return (
    <li className={styles.link} data-equals={link.joins === 'equals' || undefined}>
      <span className={styles.join}>
        {link.joins && (
          <>
            <span aria-hidden="true">{joinSigns[link.joins]}</span>
            <span className={styles.said}>{joinWords[link.joins]}</span>
          </>
        )}
      </span>
      <span>
        <span className={styles.linkWhat}>
          {link.quantity && (
            <strong>
              {namesItsHeads(link) ? quantityParts(link.quantity, voice).number : <Amount quantity={link.quantity} />}
            </strong>
          )}{' '}
          {sayDatesIn(link.label, voice)}
          {link.text && <span className={styles.linkText}> {sayDatesIn(link.text, voice)}</span>}
        </span>
        <span className={styles.origin}>
          <OriginText origin={link.origin} now={now} />
        </span>
      </span>
    </li>
  )
}

function OriginText({ origin, now }: { origin: Origin; now: Date }) {
  const voice = useVoice()
  const room = useRoom()
  const subjectHref = useSubjectHref()
  if (origin.kind === 'fact') {
    const href = subjectHref(origin.subjectId)
    const text = `${sayMoment(origin.at, now, voice)}, ${origin.byName}`
    return href ? <Link href={`${href}#fact-${origin.factId}`}>{text}</Link> : text
  }
  if (origin.kind === 'setting') {
    const href = subjectHref(origin.subjectId)
    const where = sayDatesIn(origin.where, voice)
    return href ? <Link href={href}>{where}</Link> : where
  }
  if (origin.kind === 'parameter')
    return (
      <>
        <RuleLink ruleId={origin.ruleId} title={origin.isChanged ? 'changed in this room' : 'set in the rule'} />;{' '}
        {origin.source}
      </>
    )
  if (origin.kind === 'food_plan')
    return <Link href={`/rooms/${room.id}/food`}>because of the plan of {sayMoment(origin.madeAt, now, voice)}</Link>
  if (origin.kind === 'profile') return `${origin.species}; ${origin.source}`
  return origin.source ? `${origin.by}; ${origin.source}` : origin.by
}

function RuleLink({ ruleId, title }: { ruleId: string; title: string }) {
  return <Link href={`/rooms/${useRoom().id}/rules#${ruleId}`}>{title}</Link>
}
