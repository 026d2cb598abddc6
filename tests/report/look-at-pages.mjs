// For every sheet: as many PDF pages as it numbers itself on both papers, every run and box inside the page, no text
// under 14 points, no request to anywhere, and no finding of the accessibility rules (contrast AA among them), in
// colour and in greyscale.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const sheets = resolve(process.argv[2]);
const modules = resolve(process.env.TOOLS, 'node_modules');
const { chromium } = await import(pathToFileURL(join(modules, 'playwright-core/index.mjs')));
const rules = readFileSync(join(modules, 'axe-core/axe.min.js'), 'utf8');

let failures = 0;
const check = (good, what) => {
  if (!good) { failures += 1; console.log(`FAILED ${what}`); }
};

const browser = await chromium.launch({
  executablePath: process.env.BROWSER,
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
         '--disable-component-update', '--disable-sync'],
});

// One page for the custodian: a usual week, and the demo garden in its heat wave. Twelve beds need numbered pages.
const expected = { 'usual_en.html': 1, 'usual_es.html': 1, 'demo_en.html': 1, 'demo_es.html': 1 };
const severalPages = ['many_en.html', 'many_es.html'];

for (const name of readdirSync(sheets).filter(file => file.endsWith('.html')).sort()) {
  const page = await browser.newPage();
  const requests = [];
  page.on('request', request => requests.push(request.url()));
  await page.goto(pathToFileURL(join(sheets, name)).href);
  check(requests.length === 1, `${name}: asks for ${requests.slice(1).join(' ')}`);
  const declared = await page.locator('.page').count();
  const sheet = declared - await page.locator('.page.educator').count();
  if (expected[name])
    check(sheet === expected[name], `${name}: ${sheet} pages for the custodian, wanted ${expected[name]}`);
  if (severalPages.includes(name))
    check(sheet > 1 && await page.locator('.page:has(.bed)').count() > 1, `${name}: wanted numbered pages`);
  for (const format of ['Letter', 'A4']) {
    const file = join(sheets, name.replace('.html', `_${format}.pdf`));
    await page.pdf({ path: file, format, preferCSSPageSize: false });
    const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
    const printed = Number(/Pages:\s+(\d+)/.exec(info)[1]);
    check(printed === declared, `${name} on ${format}: ${printed} PDF pages, ${declared} numbered`);
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    check((text.match(/911/g) || []).length >= 1 || name.startsWith('hostile'),
      `${name} on ${format}: the cautions are cut off`);
  }
  await page.emulateMedia({ media: 'print' });
  const faults = await page.evaluate(() => {
    const found = [];
    for (const element of document.querySelectorAll('main *')) {
      const own = [...element.childNodes].some(node => node.nodeType === 3 && node.textContent.trim());
      const size = parseFloat(getComputedStyle(element).fontSize);
      if (own && size < 14 * 96 / 72 - 0.01 && !element.closest('svg'))
        found.push(`${size} px: ${element.textContent}`);
      const sheet = element.closest('.page').getBoundingClientRect(), box = element.getBoundingClientRect();
      if (box.right > sheet.right + 1.5 || box.left < sheet.left - 1.5)
        found.push(`outside the page: ${element.outerHTML.slice(0, 90)}`);
    }
    for (const cell of document.querySelectorAll('td,th')) {
      if (cell.scrollWidth > cell.clientWidth + 1) found.push(`cut: ${cell.textContent}`);
    }
    return found;
  });
  check(faults.length === 0, `${name}: ${faults.slice(0, 5).join('; ')}`);
  for (const filter of ['none', 'grayscale(1)']) {
    await page.addStyleTag({ content: `html{filter:${filter}}` });
    await page.evaluate(rules);
    const result = await page.evaluate(() => globalThis.axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'] }));
    for (const finding of result.violations)
      check(false, `${name}, ${filter}: ${finding.id}: ${finding.help}: ${finding.nodes[0].html.slice(0, 120)}`);
    check(result.passes.length > 5, `${name}: the rules looked at nothing`);
  }
  console.log(`${name}: ${declared} pages looked at`);
  await page.close();
}
await browser.close();
process.exit(failures === 0 ? 0 : 1);
