import { column, kind, text, yesNo } from './column.ts'

/** The newest change of each rule that was ever changed. */
export const ruleChanges = kind(
  {
    ruleId: text('rule_id'),
    isOn: yesNo('is_on'),
    parameters: column<unknown>('parameters'),
  },
  `(SELECT DISTINCT ON (rule_id) rule_id, is_on, parameters FROM rule_change
    WHERE room_id = room.id ORDER BY rule_id, version DESC) AS newest`,
  'rule_id',
)
