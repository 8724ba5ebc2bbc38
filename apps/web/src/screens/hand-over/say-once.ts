import type { HandOver, HandOverNote } from '@fryward/shared'
import { saySigns } from '@fryward/words'
import { type Loss, type Undone, type Watch, whatToWatch } from './what-to-watch.ts'

type Sign = HandOver['signs'][number]
type Night = HandOver['coming'][number]

/** The same signs at the same thing, however often they were seen, newest first; and the late task they led to. */
export type Trouble = { subject: Sign['subject']; text: string; seen: Sign[]; task: Undone | undefined }
export type Nights = Pick<Night, 'subject' | 'care'> & { nights: Night[] }

export type TheOne =
  | { kind: 'hatch'; of: Night; others: Night[] }
  | { kind: 'sign'; of: Trouble }
  | { kind: 'worry'; of: HandOverNote }
  | { kind: 'undone'; of: Undone }
  | { kind: 'loss'; of: Loss }

export type HandOverOnce = {
  watch: TheOne | undefined
  worries: HandOverNote[]
  troubles: Trouble[]
  losses: Loss[]
  notDone: Undone[]
  coming: Nights[]
  notes: HandOverNote[]
}

/** The engine's late task for a culture in trouble. */
const isSeeingTo = (task: Undone) => task.isLate && 'deed' in task.title && task.title.deed === 'see_to'

function troublesOf({ signs, notDone }: HandOver): Trouble[] {
  const troubles = new Map<string, Trouble>()
  for (const sign of signs.toSorted((a, b) => b.at.localeCompare(a.at))) {
    const text = saySigns(sign.signs)
    const key = `${sign.subject.id} ${text}`
    const known = troubles.get(key) ?? { subject: sign.subject, text, seen: [], task: undefined }
    troubles.set(key, { ...known, seen: [...known.seen, sign] })
  }
  const told = new Set<string>()
  return [...troubles.values()].map((trouble) => {
    const task = notDone.find(
      (one) => isSeeingTo(one) && one.subject.id === trouble.subject.id && !told.has(one.taskId),
    )
    if (task) told.add(task.taskId)
    return { ...trouble, task }
  })
}

function nightsOf(coming: Night[]): Nights[] {
  const clutches = new Map<string, Nights>()
  for (const night of coming) {
    const known = clutches.get(night.subject.id) ?? { subject: night.subject, care: night.care, nights: [] }
    clutches.set(night.subject.id, { ...known, nights: [...known.nights, night] })
  }
  return [...clutches.values()]
}

function theOne(watch: Watch | undefined, troubles: Trouble[], coming: Night[]): TheOne | undefined {
  if (watch?.kind === 'sign') {
    const trouble = troubles.find((one) => one.seen.some(({ factId }) => factId === watch.of.factId))
    return trouble && { kind: 'sign', of: trouble }
  }
  if (watch?.kind !== 'hatch') return watch
  return { ...watch, others: coming.filter((one) => one.subject.id === watch.of.subject.id && one !== watch.of) }
}

/** Each thing in one place: what is the one thing to watch, or already a worry or a sign, is not told again below. */
export function sayOnce(handOver: HandOver, today: string): HandOverOnce {
  const allTroubles = troublesOf(handOver)
  const watch = theOne(whatToWatch(handOver, today), allTroubles, handOver.coming)
  const told = new Set(allTroubles.map(({ task }) => task?.taskId))
  return {
    watch,
    worries: handOver.worries.filter((one) => one.id !== (watch?.kind === 'worry' && watch.of.id)),
    troubles: allTroubles.filter((one) => one !== watch?.of),
    losses: handOver.losses.filter((one) => one !== watch?.of),
    notDone: handOver.notDone.filter((task) => !told.has(task.taskId) && task !== watch?.of),
    coming: nightsOf(handOver.coming).filter(
      ({ subject }) => subject.id !== (watch?.kind === 'hatch' && watch.of.subject.id),
    ),
    notes: handOver.notes.filter((note) => !note.isWorry || note.settledAt !== null),
  }
}
