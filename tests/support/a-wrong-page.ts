/** A page with every fault that the judges of `everybody.test.ts` look for; what each should say about it. */
export const WRONG_PAGE = `<!doctype html>
<html>
<head>
<title></title>
<style>
  * { margin: 0; outline: none; }
  .moves { animation: move 3s infinite; }
  @keyframes move { to { opacity: 0.5; } }
  .over { position: absolute; top: 2px; left: 0; }
  .cut { width: 4rem; overflow: hidden; white-space: nowrap; }
  .narrow { width: 1em; overflow-wrap: anywhere; }
  .wide { width: 900px; white-space: nowrap; }
  .flat { border: 0; background: Canvas; forced-color-adjust: none; }
  .lid { position: fixed; inset: auto 0 0; height: 4rem; background: Canvas; }
  svg { fill: Canvas; forced-color-adjust: none; }
</style>
</head>
<body>
<main>
  <p>Under the other text</p><p class="over">Over the other text</p>
  <h3>Too deep</h3>
  <p class="moves">It moves</p>
  <p class="cut">It is cut before its end is reached</p>
  <p class="narrow">unreadable</p>
  <p class="wide">This line is much too long for a phone, and goes on and on, and on, and on, and on, and on</p>
  <a href="http://localhost/one">More</a> <a href="http://localhost/two">More</a> <a href="http://localhost/three"></a>
  <button class="flat" tabindex="1" style="width: 10px; height: 10px"></button>
  <input id="field" aria-labelledby="nobody">
  <table><caption>Numbers</caption><tr><td>1</td><td>2</td></tr></table>
  <svg viewBox="0 0 10 10" width="50"><rect width="5" height="5" /></svg>
  <div style="height: 2000px"></div>
</main>
<nav><a href="http://localhost/nav">Somewhere</a></nav><nav><a href="http://localhost/other">Elsewhere</a></nav>
<div class="lid"></div>
</body>
</html>`

export const WRONG_SAID = {
  eyes: ['px too wide', 'runs off the side', 'is cut', 'a few letters a line', 'stands on other text'],
  moving: ['is moving', 'would move'],
  forced: ['has no edge', 'is not seen'],
  hands: ['does not show the focus', 'is 12 by 10 px', 'comes out of turn', 'stands above the one before it'],
  ears: [
    'begins with a heading of level 3',
    'has 0 headings of level 1',
    'jump to level 3',
    'has no name: link',
    'has no name: button',
    'has no name: textbox',
    'cannot be told apart: navigation',
    'has 0 of banner',
    'leads to 2 places by one name',
    'has a table without headings',
    'names by aria-labelledby what is not there',
    'has the title',
    'does not say its language',
  ],
}
