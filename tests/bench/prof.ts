import { judgeContent } from '../../src/pipeline.ts'
import { generateWorkshop } from './generate.ts'
const files = generateWorkshop(400)
console.log(
  judgeContent(files).problems.length,
  judgeContent(files)
    .problems.slice(0, 2)
    .map(p => p.message)
)
for (let i = 0; i < 10; i++) judgeContent(files)
