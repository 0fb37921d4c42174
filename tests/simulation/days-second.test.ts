import { holdDays } from './days.ts'

// A file of its own: two files run on two cores.
holdDays(1001, 2000)
