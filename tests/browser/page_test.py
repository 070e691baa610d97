#!/usr/bin/env python3
"""The pages of `check --format html` and `plan --format html` in Chromium through its driver (WebDriver, a W3C standard).

Usage: page_test.py COMMAND AXE_JS [FOLDER_FOR_SCREENSHOTS]

Outside references: axe-core (WCAG 2.2 A and AA rules) for accessibility; the JSON report of the same cards, told by
another writer, for what the page shows.
"""
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time

from selenium import webdriver
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys

command, axe = sys.argv[1], pathlib.Path(sys.argv[2]).read_text()
shots = pathlib.Path(sys.argv[3]) if len(sys.argv) > 3 else None
samples = pathlib.Path(__file__).parents[2] / 'sample-recipes'
today = ['--today', '2026-08-31']
failures = []


def expect(what, truth):
    print(('ok   ' if truth else 'FAIL ') + what)
    if not truth:
        failures.append(what)


def run(*arguments):
    return subprocess.run([command, *map(str, arguments)], capture_output=True, text=True).stdout


def browser():
    options = Options()
    options.binary_location = '/usr/bin/chromium'
    for flag in ('--headless=new', '--no-sandbox', '--disable-gpu', '--window-size=1200,1000', '--disable-dev-shm-usage',
                 '--disable-background-networking', '--no-first-run', '--disable-component-update'):
        options.add_argument(flag)
    options.set_capability('goog:loggingPrefs', {'browser': 'ALL', 'performance': 'ALL'})
    return webdriver.Chrome(service=Service('/usr/bin/chromedriver'), options=options)


def open_page(driver, file):
    driver.get_log('browser')
    driver.get_log('performance')
    driver.get(file.as_uri())


def quiet(driver, name):
    """No message on the console and no request but for the page itself."""
    console = driver.get_log('browser')
    expect(f'{name}: console is empty {[m["message"] for m in console][:2] if console else ""}', not console)
    urls = []
    for entry in driver.get_log('performance'):
        message = json.loads(entry['message'])['message']
        if message['method'] == 'Network.requestWillBeSent':
            urls.append(message['params']['request']['url'])
    left = [u for u in urls if not u.startswith(('file:', 'data:', 'blob:'))]
    expect(f'{name}: no request leaves {left[:2] if left else ""}', bool(urls) and not left)


def accessible(driver, name):
    for scheme in ('light', 'dark'):
        driver.execute_cdp_cmd('Emulation.setEmulatedMedia', {'features': [{'name': 'prefers-color-scheme', 'value': scheme}]})
        driver.execute_script(axe)
        found = driver.execute_async_script(
            "const done = arguments[0]; axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']})"
            ".then(r => done([r.passes.length, r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 2).map(n => n.html).join(' '))]),"
            " e => done([0, [String(e)]]))")
        expect(f'{name}, {scheme}: axe passes {found[0]} rules and finds nothing {found[1][:3] if found[1] else ""}',
               found[0] > 10 and not found[1])
    driver.execute_cdp_cmd('Emulation.setEmulatedMedia', {'features': []})


def shoot(driver, name):
    if shots:
        shots.mkdir(parents=True, exist_ok=True)
        driver.save_screenshot(str(shots / f'{name}.png'))


def pages_on_paper(driver, name):
    pdf = driver.execute_cdp_cmd('Page.printToPDF', {'printBackground': False, 'preferCSSPageSize': False})['data']
    import base64
    raw = base64.b64decode(pdf)
    if shots:
        (shots / f'{name}.pdf').write_bytes(raw)
    return raw.count(b'/Type /Page\n') or raw.count(b'/Type /Page')


def listed(driver):
    return driver.find_elements(By.CSS_SELECTOR, '#cards > article')


def check_page(driver, folder):
    page = folder / 'check.html'
    page.write_text(run('check', '--format', 'html', *today, samples))
    report = json.loads(run('check', '--format', 'json', *today, samples))
    open_page(driver, page)
    cards = report['recipes']
    expect('check: every card is listed', len(listed(driver)) == len(cards))
    shoot(driver, 'check-light')
    counts = {v: sum(c['verdict'] == v for c in cards) for v in ('tested', 'hazard', 'unproven', 'unreadable')}
    summary = driver.find_element(By.ID, 'summary').text
    expect(f'check: the summary counts as the JSON does: {summary}',
           all(f'{n} {v}' in summary for v, n in counts.items() if n))
    for article, card in zip(listed(driver), cards):
        found = article.find_elements(By.CSS_SELECTOR, '.findings > li')
        same = len(found) == len(card['findings']) and all(
            f['message'] in li.text and (not f['line'] or f'line {f["line"]}' in li.text) for f, li in zip(card['findings'], found))
        expect(f'check: the findings of {card["title"] or card["path"]} at their lines', same)
    # Plots: the numbers in the drawing are those of the JSON.
    for article, card in zip(listed(driver), cards):
        drawn = driver.execute_script(
            "return [...arguments[0].querySelectorAll('svg[data-plot=minutes] .of-table')].map(p => p.dataset.values)", article)
        told = [' '.join(f'{s["minutes"]:g}' for s in t['steps']) for t in card.get('tables', [])]
        expect(f'check: plotted minutes of {card["title"] or card["path"]}: {told}', drawn == told)
        labels = driver.execute_script("return [...arguments[0].querySelectorAll('svg[data-plot]')].map(s => s.getAttribute('aria-label'))", article)
        expect('check: every plot has a text', all(l and ' ft: ' in l for l in labels))
    # Filters, by the keyboard.
    for verdict in ('unproven', 'unreadable', 'tested'):
        box = driver.find_element(By.CSS_SELECTOR, f'input[value={verdict}]')
        box.send_keys(Keys.SPACE)
    expect('filters: only hazards', len(listed(driver)) == counts['hazard'] and
           all(a.get_attribute('data-verdict') == 'hazard' for a in listed(driver)))
    for verdict in ('unproven', 'unreadable', 'tested'):
        driver.find_element(By.CSS_SELECTOR, f'input[value={verdict}]').send_keys(Keys.SPACE)
    driver.execute_script("const s = document.getElementById('severity'); s.value = 'danger'; s.dispatchEvent(new Event('input', {bubbles: true}))")
    dangers = [c for c in cards if any(f['severity'] == 'danger' for f in c['findings'])]
    expect(f'filters: danger leaves {len(dangers)}', len(listed(driver)) == len(dangers))
    driver.execute_script("const s = document.getElementById('severity'); s.value = 'all'; s.dispatchEvent(new Event('input', {bubbles: true}))")
    driver.find_element(By.ID, 'words').send_keys('tomatoes')
    wanted = [c for c in cards if 'tomatoes' in (c['title'] + ' ' + c['path']).lower()]
    expect(f'filters: the word leaves {len(wanted)}', len(listed(driver)) == len(wanted) > 0)
    expect('filters: what is shown is said', f'{len(wanted)} of {len(cards)}' in driver.find_element(By.ID, 'shown').text)
    driver.find_element(By.ID, 'words').clear()
    driver.find_element(By.ID, 'words').send_keys(' ', Keys.BACKSPACE)
    driver.execute_script("for (const d of document.querySelectorAll('details')) d.open = true")
    accessible(driver, 'check')
    if shots:
        driver.execute_cdp_cmd('Emulation.setEmulatedMedia', {'features': [{'name': 'prefers-color-scheme', 'value': 'dark'}]})
        driver.execute_script("document.querySelector('figure').scrollIntoView()")
        shoot(driver, 'check-dark-plots')
        driver.execute_cdp_cmd('Emulation.setEmulatedMedia', {'features': []})
    # A telephone: nothing is wider than the screen (WCAG 1.4.10, 320 CSS pixels).
    driver.execute_cdp_cmd('Emulation.setDeviceMetricsOverride', {'width': 320, 'height': 640, 'deviceScaleFactor': 1, 'mobile': False})
    wide = driver.execute_script('return document.documentElement.scrollWidth')
    shoot(driver, 'check-320')
    expect(f'check: reflows at 320 pixels ({wide})', wide <= 320)
    driver.execute_cdp_cmd('Emulation.clearDeviceMetricsOverride', {})
    expect('check: prints', pages_on_paper(driver, 'check') >= 1)
    quiet(driver, 'check')


def science_and_changes(driver, folder):
    """--explain draws boiling point and pH, and the formula stands beside the card, all with the JSON's figures."""
    card = samples / 'thistle-lane' / 'corn-salsa.yaml'
    options = ['--explain', '--against', 'choice-salsa', *today, card]
    page = folder / 'science.html'
    page.write_text(run('check', '--format', 'html', *options))
    told = json.loads(run('check', '--format', 'json', *options))['recipes'][0]
    open_page(driver, page)
    driver.execute_script("for (const d of document.querySelectorAll('details')) d.open = true")
    ph = told['science']['acidity']
    drawn = driver.find_element(By.CSS_SELECTOR, 'svg[data-plot=acidity] .of-card').get_attribute('data-values')
    expect(f'science: pH drawn as told: {drawn}', drawn.split() == [f'{ph[k]:g}' for k in ('ph', 'ph_bound', 'ph_strict_bound')])
    at = driver.find_element(By.CSS_SELECTOR, 'svg[data-plot=boiling] .at').get_attribute('data-ft')
    expect(f'science: the boiling point is marked at {at} ft', float(at) == round(told['science']['altitude']['altitude_ft']))
    bars = driver.execute_script("return [...document.querySelectorAll('.bar rect')].map(r => Number(r.dataset.percent).toFixed(3))")
    expect(f'changes: bars as told: {bars}', bars == [f'{line["percent"]:.3f}' for line in told['compared']['lines'] if 'percent' in line])
    rows = driver.find_elements(By.CSS_SELECTOR, 'table.change tbody tr')
    expect('changes: every line of card and formula', len(rows) == len(told['compared']['lines']))
    driver.execute_script("document.querySelector('table.change').scrollIntoView()")
    shoot(driver, 'change')
    driver.execute_script("document.querySelector('svg[data-plot=boiling]').scrollIntoView()")
    shoot(driver, 'science')
    accessible(driver, 'science')
    quiet(driver, 'science')


def page_in_one_line(driver, folder):
    """Of a web page whose recipe is one line of JSON-LD the words meant are shown, not the script."""
    steps = ['Pack the cucumbers with dill into quart jars.',
             'Process in a hot water bath for 5 minutes so they stay crisp, then turn the jars upside down to seal.']
    recipe = {'@context': 'https://schema.org', '@type': 'Recipe', 'name': 'Canned dills',
              'recipeIngredient': ['9 lb pickling cucumbers', '2 cups vinegar', '1/4 cup canning salt'],
              'recipeInstructions': [{'@type': 'HowToStep', 'text': step} for step in steps]}
    site = folder / 'dills.html'
    site.write_text(f'<html><head>\n<script type="application/ld+json">{json.dumps(recipe)}</script></head><body></body></html>\n')
    page = folder / 'one-line.html'
    page.write_text(run('check', '--format', 'html', *today, site))
    open_page(driver, page)
    quoted = [pre.text for pre in driver.find_elements(By.CSS_SELECTOR, 'article pre')]
    expect(f'one line: the words stand under the findings {quoted[:1]}', any('upside down' in q for q in quoted))
    expect('one line: no script is shown', quoted and not any('ld+json' in q for q in quoted))
    for width in (1100, 400):
        driver.execute_cdp_cmd('Emulation.setDeviceMetricsOverride', {'width': width, 'height': 900, 'deviceScaleFactor': 1, 'mobile': False})
        tallest = driver.execute_script("return Math.max(...[...document.querySelectorAll('article pre')].map(p => p.clientHeight))")
        expect(f'one line: a quote is {tallest} pixels high at {width}', tallest <= 160)
        driver.execute_script("document.querySelector('article').scrollIntoView()")
        shoot(driver, f'one-line-{width}')
    driver.execute_cdp_cmd('Emulation.clearDeviceMetricsOverride', {})
    quiet(driver, 'one line')


def text_is_no_markup(driver, folder):
    """What a card says never becomes part of the page."""
    card = folder / 'evil.yaml'
    card.write_text('recipe: "</script><img src=x onerror=alert(1)> <b>Beans</b>"\ningredients:\n  - "9 lb </script> beans"\n')
    page = folder / 'evil.html'
    page.write_text(run('check', '--format', 'html', *today, card))
    open_page(driver, page)
    expect('markup of a card is shown as text', driver.find_element(By.CSS_SELECTOR, 'article h3').text.startswith('</script><img'))
    expect('no element comes from a card', not driver.find_elements(By.CSS_SELECTOR, 'article img, article b'))
    quiet(driver, 'evil')


def sheet(driver, folder):
    card = samples / 'thistle-lane' / 'crushed-tomatoes.yaml'
    page = folder / 'sheet.html'
    page.write_text(run('plan', '--format', 'html', '--jars', '28', *today, card))
    open_page(driver, page)
    plan = json.loads(run('plan', '--format', 'json', '--jars', '28', *today, card))
    text = driver.find_element(By.TAG_NAME, 'main').text
    expect('sheet: the time stands there', f'{plan["cards"][0]["minutes"]:g} min' in text)
    expect('sheet: jars, date and batch', '28 pints' in text and 'Date' in text and 'Batch' in text)
    shoot(driver, 'sheet')
    accessible(driver, 'sheet')
    expect('sheet: one page of paper', pages_on_paper(driver, 'sheet') == 1)
    quiet(driver, 'sheet')


def many(driver, folder):
    """10,000 cards: under 12 MB, and answers within a second."""
    cards = folder / 'many'
    cards.mkdir()
    files = [f.read_text() for f in sorted(samples.rglob('*.yaml')) if f.name not in ('kitchen.yaml', 'slipped.yaml')]
    texts = [card for text in files for card in text.split('\n---\n')]
    for i in range(100):
        pieces = [texts[(i + j) % len(texts)].replace('recipe: ', f'recipe: {i * 100 + j} ', 1) for j in range(100)]
        (cards / f'{i:03}.yaml').write_text('\n---\n'.join(pieces))
    page = folder / 'many.html'
    started = time.monotonic()
    subprocess.run([command, 'check', '--format', 'json', *today, '--output', str(folder / 'many.json'), str(cards)])
    json_took = time.monotonic() - started
    started = time.monotonic()
    subprocess.run([command, 'check', '--format', 'html', *today, '--output', str(page), str(cards)])
    html_took = time.monotonic() - started
    size = page.stat().st_size / 1e6
    expect(f'many: the page has {size:.1f} MB', size < 12)
    print(f'     built in {html_took:.2f} s, JSON in {json_took:.2f} s (measured, not judged)')
    open_page(driver, page)
    total = driver.find_element(By.ID, 'summary').text
    expect(f'many: {total}', '10,000 recipes' in total)
    took = driver.execute_script("const t = performance.getEntriesByType('navigation')[0]; return t.domContentLoadedEventEnd - t.responseEnd")
    started = time.monotonic()
    driver.find_element(By.CSS_SELECTOR, 'input[value=hazard]').send_keys(Keys.SPACE)
    filtered = time.monotonic() - started
    print(f'     interactive {took:.0f} ms after loading, a filter {filtered * 1000:.0f} ms (measured, not judged)')
    expect('many: a hundred at a time', len(listed(driver)) == 100)
    driver.find_element(By.ID, 'more').click()
    expect('many: more on demand', len(listed(driver)) == 200)
    quiet(driver, 'many')


with tempfile.TemporaryDirectory() as name:
    os.environ['HOME'] = name  # a browser profile that is thrown away
    driver = browser()
    try:
        for test in (check_page, science_and_changes, page_in_one_line, text_is_no_markup, sheet, many):
            test(driver, pathlib.Path(name))
    finally:
        driver.quit()
print(f'{len(failures)} failed' if failures else 'all passed')
sys.exit(1 if failures else 0)
