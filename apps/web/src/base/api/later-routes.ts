// A door of its own, so that a page may load these after itself.
export { laterRoutes } from '@fryward/shared'
