import type { TestProject } from 'vitest/node'
import { ensureDashboard, ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { launchBrowserServer } from './browser.ts'
import { startDashboard } from './stage-dashboard.mjs'

declare module 'vitest' {
  interface ProvidedContext {
    /** Inner address of the built dashboard. */
    dashboardUrl: string
    /** Where the run's one browser listens. */
    browserEndpoint: string
  }
}

/** Builds the dashboard where that is needed, serves it, and launches one browser for all files of the project. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await ensurePrograms()
  await ensureDashboard()
  const dashboard = await startDashboard()
  const browser = await launchBrowserServer()
  project.provide('dashboardUrl', dashboard.url)
  project.provide('browserEndpoint', browser.wsEndpoint())
  return async () => {
    await browser.close()
    await dashboard.stop()
  }
}
