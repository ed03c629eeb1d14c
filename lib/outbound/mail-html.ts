/** One block of a mail: it becomes text and HTML alike, so that the two never differ. */
export type Block =
  | { kind: 'heading' | 'title' | 'text' | 'small'; say: string }
  | { kind: 'buttons'; links: { say: string; href: string }[] }

/** The blocks as plain text. */
export function mailText(blocks: readonly Block[]): string {
  return `${blocks
    .map((block) => {
      if (block.kind === 'buttons') return block.links.map(({ say, href }) => `${say}:\n${href}`).join('\n')
      return block.kind === 'heading' ? `${block.say}\n${'='.repeat(Math.min(60, block.say.length))}` : block.say
    })
    .join('\n\n')}\n`
}

const FONT = 'font-family:Verdana,Arial,sans-serif'
const STYLES = {
  heading: `font:bold 21px/1.3 Georgia,serif;margin:28px 0 8px;border-bottom:2px solid #15212b;padding-bottom:6px`,
  title: `font:bold 17px/1.3 Georgia,serif;margin:22px 0 6px`,
  text: `font-size:16px;line-height:1.5;margin:0 0 8px`,
  small: `font-size:14px;line-height:1.5;margin:24px 0 0;color:#44535f`,
} as const

/** The blocks as an HTML mail: no picture, no script, nothing fetched from anywhere. */
export function mailHtml(subject: string, blocks: readonly Block[]): string {
  const body = blocks.map(blockHtml).join('\n')
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>${escaped(subject)}</title></head>
<body style="margin:0;padding:16px;${FONT}"><div style="max-width:560px;margin:0 auto">
${body}
</div></body></html>
`
}

function blockHtml(block: Block): string {
  if (block.kind === 'buttons') {
    const links = block.links.map(
      ({ say, href }) =>
        `<a href="${escaped(href)}" style="display:inline-block;border:2px solid currentColor;padding:12px 16px;margin:4px 8px 4px 0;font-weight:bold;text-decoration:none;color:inherit">${escaped(say)}</a>`,
    )
    return `<p style="margin:10px 0 6px;font-size:16px">${links.join('')}</p>`
  }
  const tag = block.kind === 'heading' ? 'h1' : block.kind === 'title' ? 'h2' : 'p'
  return `<${tag} style="${STYLES[block.kind]}">${escaped(block.say)}</${tag}>`
}

const SIGNS: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign)
}
