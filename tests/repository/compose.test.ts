import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseEnv } from 'node:util'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { z } from 'zod'
import { root } from '../support/project-root.ts'

const ServiceSchema = z.object({
  image: z.string().optional(),
  user: z.string().optional(),
  build: z.object({ context: z.string(), dockerfile: z.string(), target: z.string() }).optional(),
  environment: z.record(z.string(), z.string()).default({}),
  volumes: z.array(z.string()).default([]),
  depends_on: z.record(z.string(), z.object({ condition: z.string() })).default({}),
  healthcheck: z.object({ test: z.array(z.string()) }).optional(),
})
const ComposeSchema = z.object({
  services: z.record(z.string(), ServiceSchema),
  volumes: z.record(z.string(), z.null()),
})

const text = readFileSync(join(root, 'docker-compose.yml'), 'utf8')
const compose = ComposeSchema.parse(parse(text, { merge: true }))
const services = Object.entries(compose.services)
const dockerfile = readFileSync(join(root, 'apps/Dockerfile'), 'utf8')

/** Where a compiled file of a command comes from. */
const sourceOf = (compiled: string) => compiled.replace('/dist/', '/src/').replace(/\.js$/, '.ts')

describe('docker-compose.yml', () => {
  it('has PostgreSQL 18, the API, the scheduler, the dashboard and the migrations before them', () => {
    expect(Object.keys(compose.services).sort()).toEqual(['api', 'migrate', 'postgres', 'scheduler', 'web'])
    expect(compose.services.postgres?.image).toMatch(/^postgres:18/)
  })

  it.each(services)(
    '%s depends only on services and volumes that exist, and waits for their health',
    (_name, service) => {
      for (const [other, { condition }] of Object.entries(service.depends_on)) {
        const dependency = compose.services[other]
        expect(dependency).toBeDefined()
        if (condition === 'service_healthy') expect(dependency?.healthcheck).toBeDefined()
      }
      for (const volume of service.volumes) expect(Object.keys(compose.volumes)).toContain(volume.split(':')[0])
    },
  )

  it.each(services.filter(([name]) => name !== 'migrate'))('%s has a health check', (_name, service) => {
    expect(service.healthcheck?.test.length).toBeGreaterThan(1)
  })

  it.each(services)('%s does not run as root', (_name, service) => {
    if (service.build === undefined) expect(service.user).toBe('postgres')
    else expect(userOf(service.build.target)).toBe('node')
  })

  it.each(services.filter(([, service]) => service.build))(
    '%s is a target of the Dockerfile it names',
    (_name, service) => {
      expect(existsSync(join(root, service.build?.context ?? '', service.build?.dockerfile ?? ''))).toBe(true)
      expect(dockerfile).toMatch(new RegExp(`^FROM \\S+ AS ${service.build?.target}$`, 'm'))
    },
  )

  it('takes every secret from the environment and refuses to start without it', () => {
    const secrets = services.flatMap(([, service]) =>
      Object.entries(service.environment).filter(([key]) => isSecret(key)),
    )
    expect(secrets.length).toBeGreaterThanOrEqual(5)
    for (const [, value] of secrets) expect(value).toMatch(/\$\{(POSTGRES_PASSWORD|AUTH_SECRET):\?/)
  })

  it('uses no variable that .env.example does not explain', () => {
    const known = Object.keys(parseEnv(readFileSync(join(root, '.env.example'), 'utf8')))
    const used = [...text.matchAll(/\$\{([A-Z_]+)/g)].map((match) => match[1])
    expect(used).toContain('AUTH_SECRET')
    for (const name of used) expect(known).toContain(name)
  })

  it("sends links to the host's own name, not to an address inside, until it is given another", () => {
    const named = text.replaceAll(/\$\{PORT:-(\d+)\}/g, '$1').match(/PUBLIC_URL: \$\{PUBLIC_URL:-(.*)\}/)?.[1]
    expect(named).toBe('http://localhost:3000')
  })

  it('tells the API and the scheduler only what they read', () => {
    const read = (path: string) => readFileSync(join(root, path), 'utf8')
    const readers = {
      api: read('apps/api/src/config.ts'),
      scheduler: read('apps/scheduler/src/main.ts') + read('apps/scheduler/src/settings.ts'),
      migrate: read('packages/store/src/migrations/main.ts'),
    }
    for (const [name, source] of Object.entries(readers)) {
      for (const key of Object.keys(compose.services[name]?.environment ?? {})) expect(source).toContain(key)
    }
  })
})

describe('apps/Dockerfile', () => {
  it('runs only programs whose source exists', () => {
    const paths = [...dockerfile.matchAll(/(?:apps|packages|prisma)\/[\w./-]+\.m?js/g)].map(([path]) => path)
    expect(paths).toEqual(expect.arrayContaining(['apps/api/dist/main.js', 'apps/scheduler/dist/main.js']))
    for (const path of paths) expect(existsSync(join(root, sourceOf(path))), path).toBe(true)
    for (const [path] of dockerfile.matchAll(/node_modules\/[\w./-]+/g))
      expect(existsSync(join(root, path)), path).toBe(true)
  })

  it('builds on Node 24', () => {
    for (const [, image] of dockerfile.matchAll(/^FROM (\S*:\S+)/gm)) expect(image).toMatch(/^node:24-/)
  })
})

function isSecret(key: string): boolean {
  return /SECRET|PASSWORD|DATABASE_URL/.test(key)
}

/** The user that a target of the Dockerfile ends up with, its parent stages included. */
function userOf(target: string): string | undefined {
  const stages = dockerfile.split(/^(?=FROM )/m)
  const stage = stages.find((part) => part.split('\n')[0]?.endsWith(` AS ${target}`))
  if (stage === undefined) return undefined
  const own = stage.match(/^USER (\S+)/m)?.[1]
  return own ?? userOf(stage.match(/^FROM (\S+)/)?.[1] ?? '')
}
