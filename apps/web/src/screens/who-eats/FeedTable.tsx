import { sayNumber, sayPercent, sayQuantity } from '@fryward/words'
import charts from '@/base/charts/charts.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import type { Ends, FlowDay } from './FlowChart.tsx'
import styles from './who-eats.module.css'

type Props = { day: FlowDay; ends: Ends; title: string; prey: 'rotifers' | 'nauplii' }

const lacking = { rotifers: 'missing', nauplii: 'still to be hatched' }
const heading = { rotifers: 'Who eats', nauplii: 'Who eats Artemia' }

// Under a hundredth of what is wanted nobody would call it missing.
const leastMissing = 0.01

/** The same for those who read: each eater, what it gets from which culture, and what is missing. */
export function FeedTable({ day, ends, title, prey }: Props) {
  const voice = useVoice()
  const nameOf = (id: string) => ends.cultures.find((culture) => culture.id === id)?.name ?? id
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard
    <section className={charts.scroll} tabIndex={0} aria-label={`${heading[prey]} from what, ${title}`}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{heading[prey]}</th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {ends.eaters.map(({ id, name, note }) => {
            const gives = day.gives.filter(({ eaterId }) => eaterId === id)
            const { wanted, got, chanceShort } = day.eaters.find((each) => each.id === id)!
            const missing = wanted - got
            return (
              <tr key={id}>
                <th scope="row">
                  {name}
                  {note && <span className={styles.soft}>, {note}</span>}
                  <br />
                  <span className={styles.soft}>
                    wants {sayNumber(wanted, voice)} {prey}
                  </span>
                </th>
                <td>
                  {gives.map(({ cultureId, volumeL, animals }) => (
                    <span key={cultureId}>
                      {volumeL > 0 ? (
                        <>
                          <strong>{sayQuantity({ value: volumeL, unit: 'L' }, voice)}</strong> of {nameOf(cultureId)},
                          about {sayNumber(animals, voice)}
                        </>
                      ) : (
                        <>
                          <strong>{sayNumber(animals, voice)}</strong> of {nameOf(cultureId)}
                        </>
                      )}
                      <br />
                    </span>
                  ))}
                  {missing > leastMissing * wanted && (
                    <span className={prey === 'rotifers' ? styles.missing : styles.soft}>
                      {sayNumber(missing, voice)} {lacking[prey]}
                    </span>
                  )}
                  {chanceShort >= 0.05 && (
                    <span className={styles.soft}>{sayPercent(chanceShort, voice)} that it falls short</span>
                  )}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}
