import sharp from 'sharp'
const [out, max, ...names] = process.argv.slice(2)
let x=0; const parts=[]; let H=0
for (const n of names){ const m=await sharp(n).metadata(); const h=Math.min(m.height,+max); parts.push({input: await sharp(n).extract({left:0,top:0,width:m.width,height:h}).toBuffer(), left:x, top:0}); x+=m.width+20; H=Math.max(H,h)}
await sharp({create:{width:x,height:H,channels:3,background:'#888'}}).composite(parts).png().toFile(out)
