'use client'

import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from './counting.module.css'

/** A count as it was typed, sample by sample. */
export type Sampled = { animals: string[]; volumeMl: string; dilution: string; eggs: string; females: string }

type Props = {
  typed: Sampled
  change: (part: Partial<Sampled>) => void
  /** Heads counted one by one, in no volume. */
  isHeads: boolean
  withEggs: boolean
  error?: string | undefined
}

/** What the contract allows in one count. */
const mostSamples = 20

/** Sample by sample as the eye counts them. */
export function Samples({ typed, change, isHeads, withEggs, error }: Props) {
  return (
    <>
      <Row isTight>
        {typed.animals.map((text, i) => (
          <NumberBox
            // biome-ignore lint/suspicious/noArrayIndexKey: samples have no other name than their place
            key={i}
            label={isHeads ? `Number ${i + 1}` : `Sample ${i + 1}`}
            text={text}
            isWhole
            isLarge
            error={i === 0 && error !== undefined}
            onText={(next) => change({ animals: typed.animals.map((one, j) => (j === i ? next : one)) })}
          />
        ))}
      </Row>
      {error && <p className={styles.worry}>{error}</p>}
      {typed.animals.length < mostSamples && (
        <div>
          <Button variant="subtle" onClick={() => change({ animals: [...typed.animals, ''] })}>
            One more sample
          </Button>
        </div>
      )}
      {!isHeads && <InVolume typed={typed} change={change} />}
      {withEggs && <EggsOn typed={typed} change={change} />}
    </>
  )
}

const InVolume = ({ typed, change }: Pick<Props, 'typed' | 'change'>) => (
  <Row>
    <NumberBox
      label="Volume of one sample"
      unit="mL"
      text={typed.volumeMl}
      onText={(volumeMl) => change({ volumeMl })}
    />
    <NumberBox
      label="Diluted, times"
      help="1 is straight from the vessel"
      text={typed.dilution}
      onText={(dilution) => change({ dilution })}
    />
  </Row>
)

const EggsOn = ({ typed, change }: Pick<Props, 'typed' | 'change'>) => (
  <Row>
    <NumberBox
      label="Animals looked at for eggs"
      isWhole
      text={typed.females}
      onText={(females) => change({ females })}
    />
    <NumberBox label="Eggs on them" isWhole text={typed.eggs} onText={(eggs) => change({ eggs })} />
  </Row>
)
