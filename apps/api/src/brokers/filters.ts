/**
 * What is subscribed to so that every device's topic and all below it is heard: a message once, however the topics lie
 * below one another. `#` takes the topic above it as well (MQTT 3.1.1, section 4.7.1.2).
 */
export const filtersOf = (topics: readonly string[]): string[] =>
  topics.filter((topic) => !topics.some((other) => topic.startsWith(`${other}/`))).map((topic) => `${topic}/#`)
