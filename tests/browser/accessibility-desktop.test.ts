import { DESKTOP } from '../support/browser.ts'
import { describeAccessibility } from './accessibility-cases.ts'

describeAccessibility('desktop', DESKTOP)
