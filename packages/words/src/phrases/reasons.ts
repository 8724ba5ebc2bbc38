/** Why an open task went from the list: "No longer needed: R1 was changed". */
export const sayWithdrawal = (reason: string | null): string =>
  reason === null ? 'No longer needed' : `No longer needed: ${reason}`
