import { hashPassword } from '@fryward/api/password-hash'
import { newPassword, resetPassword as reset } from '@fryward/room'
import { openDatabase } from '@fryward/store'
import { prepareDataFolder } from './data-folder.ts'
import { migrate, openInstallationDatabase, stopUnlessAdopted } from './database.ts'
import type { Settings } from './settings.ts'

/**
 * Gives an account a new password, while Fryward runs or not. Whoever can run this has the server in their hands; it is
 * the way in for an owner whom nobody else can let in.
 */
export async function resetPassword(settings: Settings, email: string): Promise<void> {
  prepareDataFolder(settings.DATA_DIR)
  const installation = await openInstallationDatabase(settings)
  try {
    await migrate(installation.connectionString, (sentence) => console.log(sentence))
    const database = openDatabase({ connectionString: installation.connectionString, maxConnections: 1 })
    try {
      const ctx = { database, actor: { kind: 'system' as const, job: 'reset-password' }, now: new Date().toISOString() }
      const password = newPassword()
      const { name, hadSecondFactor } = await reset({ ctx, email, passwordHash: await hashPassword(password) })
      console.log(`The new password of ${name} (${email}): ${password}`)
      console.log('It is shown this once. Every browser is signed out; change it under More, Your account.')
      if (hadSecondFactor) console.log('The second factor was taken off; set it up again after signing in.')
    } finally {
      await database.close()
    }
  } finally {
    await stopUnlessAdopted(installation)
  }
}
