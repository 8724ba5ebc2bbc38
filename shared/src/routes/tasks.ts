import * as z from 'zod/mini'
import { IdSchema, PlainDateSchema } from '../primitives.ts'
import { DaySchema, DutySchema, SignOffSchema, SkipSchema, TakeDutySchema, TaskSchema, TaskWhySchema } from '../task.ts'
import { EmptySchema, inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('tasks')

export const taskRoutes = {
  getDay: get('/rooms/:roomId/days/:date', {
    summary: "A day's list; `today` and `tomorrow` are dates too",
    permission: 'read',
    params: { ...inRoom, date: z.union([PlainDateSchema, z.enum(['today', 'tomorrow'])]) },
    response: DaySchema,
  }),
  takeDuty: write('PUT', '/rooms/:roomId/days/:date/duty', {
    summary: 'Say who has the room on a day',
    permission: 'sign_off',
    params: { ...inRoom, date: PlainDateSchema },
    body: TakeDutySchema,
    response: DutySchema,
    status: 200,
  }),
  getTask: get('/rooms/:roomId/tasks/:taskId', {
    summary: 'One task',
    permission: 'read',
    params: { ...inRoom, taskId: IdSchema },
    response: TaskSchema,
  }),
  getTaskWhy: get('/rooms/:roomId/tasks/:taskId/why', {
    summary: 'Where each number of a task was read',
    permission: 'read',
    params: { ...inRoom, taskId: IdSchema },
    response: TaskWhySchema,
  }),
  signOffTask: write('POST', '/rooms/:roomId/tasks/:taskId/sign-off', {
    summary: 'Done, with what was measured',
    permission: 'sign_off',
    params: { ...inRoom, taskId: IdSchema },
    body: SignOffSchema,
    response: TaskSchema,
    status: 200,
  }),
  skipTask: write('POST', '/rooms/:roomId/tasks/:taskId/skip', {
    summary: 'Not done, and why',
    permission: 'sign_off',
    params: { ...inRoom, taskId: IdSchema },
    body: SkipSchema,
    response: TaskSchema,
    status: 200,
  }),
  undoTask: write('POST', '/rooms/:roomId/tasks/:taskId/undo', {
    summary: 'Take back a sign-off or a skip, within a quarter of an hour',
    permission: 'sign_off',
    params: { ...inRoom, taskId: IdSchema },
    body: EmptySchema,
    response: TaskSchema,
    status: 200,
  }),
}
