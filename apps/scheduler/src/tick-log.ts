export type TickLog = {
  warn: (detail: object, message: string) => void
  info: (detail: object, message: string) => void
}
