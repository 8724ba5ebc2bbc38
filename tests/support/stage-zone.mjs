/**
 * A time zone of whole hours in which it is now between `hour` and the next hour, so that what is due does not hang on
 * when a script or a test happens to run.
 * @param {number} hour 0 to 23
 * @param {Date} [now]
 * @returns {string} such as Etc/GMT-3
 */
export function zoneAtHour(hour, now = new Date()) {
  const ahead = ((hour - now.getUTCHours() + 36) % 24) - 12
  // These zones are named by what is added to get UTC.
  return ahead === 0 ? 'Etc/GMT' : `Etc/GMT${ahead > 0 ? '-' : '+'}${Math.abs(ahead)}`
}
