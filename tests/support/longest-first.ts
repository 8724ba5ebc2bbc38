import { BaseSequencer, type TestSpecification } from 'vitest/node'

const projects = ['server', 'browser', 'dom', 'pure']

// What takes long whatever the size of its file says, which is what the others go by.
const long = [
  'tests/standalone/start.test.ts',
  'tests/api/bad-input.test.ts',
  'tests/api/permissions.test.ts',
  'tests/live/live.test.ts',
  'tests/browser/accessibility.test.ts',
  'tests/browser/today.test.ts',
  'tests/browser/clutch-life.test.ts',
  'tests/browser/outbox.test.ts',
  'packages/husbandry/src/rules/simulated-room-small.test.ts',
  'packages/husbandry/src/rules/simulated-room-large.test.ts',
  'packages/husbandry/src/rules/every-rule.property.test.ts',
]

/** A project's files after another's, as workers serve one project each; in it the longest first, so that none is waited for at the end. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const bySize = await super.sort(files)
    const place = ({ moduleId }: TestSpecification) => {
      const found = long.findIndex((path) => moduleId.endsWith(path))
      return found < 0 ? long.length : found
    }
    const turn = (file: TestSpecification) => projects.indexOf(file.project.name)
    return bySize.sort((a, b) => turn(a) - turn(b) || place(a) - place(b))
  }
}
