export * from './species/index.ts'
export * from './thermal/index.ts'
