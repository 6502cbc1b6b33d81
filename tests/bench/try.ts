import { benchCheck } from './check.ts'
console.log(await benchCheck(Number(process.argv[2] ?? 100)))
