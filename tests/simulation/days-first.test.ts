import { holdDays } from './days.ts'

holdDays(1, 1000)
