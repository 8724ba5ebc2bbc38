import { PHONE } from '../support/browser.ts'
import { describeAccessibility } from './accessibility-cases.ts'

describeAccessibility('phone', PHONE)
