// Runs the parts of a check in turn and tells each one's time. Plain JavaScript: used before anything is compiled.
import { spawn } from 'node:child_process'
import { root } from '../../apps/standalone/build/project.mjs'

const secondsSince = (startedAt) => `${((Date.now() - startedAt) / 1000).toFixed(1)} s`

/** Runs one part; true when it went well. A part is a function that throws or resolves to false when it did not. */
export async function runPart(name, part) {
  const startedAt = Date.now()
  console.log(`\n== ${name}`)
  let isGood = true
  try {
    isGood = (await part()) !== false
  } catch (thrown) {
    isGood = false
    console.log(thrown instanceof Error ? thrown.message : thrown)
  }
  console.log(`== ${name}: ${isGood ? 'good' : 'FAILED'} (${secondsSince(startedAt)})`)
  return isGood
}

/** Runs one of the project's own programs in this terminal; true when it ended with 0. */
export function runTool(path, list) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [`node_modules/${path}`, ...list], { cwd: root, stdio: 'inherit' })
    child.on('error', (error) => {
      console.log(error.message)
      resolve(false)
    })
    child.on('exit', (code) => resolve(code === 0))
  })
}

export const checkTypes = async () => {
  const isGood = await checkTypesOfPackages()
  return (await checkTypesOfDashboard()) && isGood
}

/** All but the dashboard's. */
export const checkTypesOfPackages = () => runTool('typescript/bin/tsc', ['-b'])

/** The dashboard's; its build writes some of them. */
export const checkTypesOfDashboard = () => runTool('typescript/bin/tsc', ['--noEmit', '-p', 'apps/web'])

export const checkFormatAndLint = () => runTool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.'])
