// Lists, filters and plots the cards that stand as JSON in #data. Texts are numbers into one list; each card brings
// the texts that it is the first to use ("n"). Everything is put in as text, never as markup.
(() => {
  'use strict';
  const data = JSON.parse(document.getElementById('data').textContent);
  const texts = [];
  for (const card of data.cards) texts.push(...card.n);
  const text = (i) => texts[i];
  const verdicts = data.verdicts;
  const severities = data.severities;  // least first
  const page = 100;

  const make = (name, properties = {}, ...children) => {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(properties)) element.setAttribute(key, value);
    element.append(...children);
    return element;
  };
  const svgMake = (name, properties = {}, ...children) => {
    const element = document.createElementNS('http://www.w3.org/2000/svg', name);
    for (const [key, value] of Object.entries(properties)) element.setAttribute(key, value);
    element.append(...children);
    return element;
  };
  const grouped = (number) => String(Math.round(number)).replace(/\B(?=(\d{3})+$)/g, ',');
  const plural = (n, one, many) => `${grouped(n)} ${n === 1 ? one : many}`;

  // ---- sources, numbered as they are met
  const sourceNumbers = new Map();
  const sourceLink = (i) => {
    if (!sourceNumbers.has(i)) {
      sourceNumbers.set(i, sourceNumbers.size + 1);
      document.getElementById('sources').append(make('li', {id: `source-${i}`}, text(i)));
    }
    return make('a', {href: `#source-${i}`}, text(i));
  };

  // ---- plots
  const width = 460, height = 210, left = 46, right = 26, top = 14, bottom = 42;
  const ceiling = 10000;  // ft; where the tables' open bands are taken to end

  const ticks = (low, high) => {
    const step = [1, 2, 5, 10, 15, 20, 30, 60].find((s) => (high - low) / s <= 6) || 120;
    const found = [];
    for (let v = Math.ceil(low / step) * step; v <= high; v += step) found.push(v);
    return found;
  };

  const plot = (use, key, unit, name) => {
    const steps = use.steps.filter((s) => s[key] !== null);
    const card = use[key];
    if (steps.length === 0) return null;
    const values = steps.map((s) => s[key]).concat(card === null ? [] : [card]);
    const span = Math.max(...values) - Math.min(...values);
    const low = Math.max(0, Math.floor(Math.min(...values) - Math.max(1, span * 0.2)));
    const high = Math.ceil(Math.max(...values) + Math.max(1, span * 0.2));
    const x = (ft) => left + (Math.min(Math.max(ft, 0), ceiling) / ceiling) * (width - left - right);
    const y = (v) => height - bottom - ((v - low) / (high - low)) * (height - top - bottom);
    const told = steps.map((s) => `${s.to === null ? `above ${grouped(s.from - 1)}` : `${grouped(s.from)} to ${grouped(s.to)}`} ft: ${s[key]} ${unit}`);
    const label = `${name} over altitude. Table: ${told.join('; ')}. ` +
      (card === null ? 'The card gives none.' : `Card: ${card} ${unit}.`);
    const svg = svgMake('svg', {viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': label, 'data-plot': key});
    svg.append(svgMake('path', {class: 'axis', d: `M${left} ${top}V${height - bottom}H${width - right}`}));
    for (const v of ticks(low, high))
      svg.append(svgMake('text', {x: left - 6, y: y(v) + 4, 'text-anchor': 'end'}, String(v)));
    for (let ft = 0; ft <= ceiling; ft += 2000)
      svg.append(svgMake('text', {x: x(ft), y: height - bottom + 16, 'text-anchor': 'middle'}, grouped(ft)));
    svg.append(svgMake('text', {x: (left + width - right) / 2, y: height - 6, 'text-anchor': 'middle'}, 'altitude, ft'));
    let path = '';
    for (const s of steps) {
      const to = s.to === null ? ceiling : s.to;
      path += `${path ? 'L' : 'M'}${x(s.from)} ${y(s[key])}H${x(to)}`;
    }
    svg.append(svgMake('path', {class: 'of-table', d: path, 'data-values': steps.map((s) => s[key]).join(' ')}));
    if (card !== null)
      svg.append(svgMake('path', {class: 'of-card', d: `M${left} ${y(card)}H${width - right}`, 'data-value': card}));
    for (const ft of use.at)
      svg.append(svgMake('line', {class: 'at', x1: x(ft), x2: x(ft), y1: top, y2: height - bottom, 'data-ft': ft}));
    const at = use.at.length ? ` Dotted: judged at ${use.at.map((ft) => `${grouped(ft)} ft`).join(' and ')}.` : '';
    return make('figure', {}, make('figcaption', {}, `${name}${use.jar ? `, ${use.jar}` : ''} (${use.method.replace('-', ' ')})`), svg,
      make('p', {}, `Solid: the table, ${unit}. Dashed: the card.${at}`));
  };

  const tableUse = (t) => ({
    jar: text(t[0]), method: text(t[1]), minutes: t[2], psi: t[3], at: t[4],
    steps: t[5].map((s) => ({from: s[0], to: s[1], minutes: s[2], psi: s[3]})),
  });

  const plotTable = (use) => {
    const pressure = use.steps.some((s) => s.psi !== null);
    const table = make('table', {}, make('caption', {}, `Table${use.jar ? ` for ${use.jar} jars` : ''} in figures`));
    const head = make('tr', {}, make('th', {scope: 'col'}, 'altitude'), make('th', {scope: 'col'}, 'minutes'));
    if (pressure) head.append(make('th', {scope: 'col'}, 'psi'));
    table.append(make('thead', {}, head));
    const body = make('tbody');
    const row = (name, minutes, psi) => {
      const tr = make('tr', {}, make('th', {scope: 'row'}, name), make('td', {class: 'number'}, minutes === null ? '' : String(minutes)));
      if (pressure) tr.append(make('td', {class: 'number'}, psi === null ? '' : String(psi)));
      body.append(tr);
    };
    for (const s of use.steps)
      row(s.to === null ? `above ${grouped(s.from - 1)} ft` : `${grouped(s.from)} to ${grouped(s.to)} ft`, s.minutes, s.psi);
    row('the card', use.minutes, use.psi);
    table.append(body);
    return table;
  };

  const frame = (label, name) => {
    const svg = svgMake('svg', {viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': label, 'data-plot': name});
    svg.append(svgMake('path', {class: 'axis', d: `M${left} ${top}V${height - bottom}H${width - right}`}));
    return svg;
  };
  const write = (svg, x, y, words, anchor = 'middle') => svg.append(svgMake('text', {x, y, 'text-anchor': anchor}, words));

  // Where water boils over the altitude, and where this card is processed.
  const boilingPlot = ([ft, boils]) => {
    const low = 190, high = 214;
    const x = (v) => left + (Math.min(v, ceiling) / ceiling) * (width - left - right);
    const y = (v) => height - bottom - ((v - low) / (high - low)) * (height - top - bottom);
    const svg = frame(`Boiling temperature of water over altitude, falling from ${data.boiling[0][1]} F at 0 ft; at ${grouped(ft)} ft: ${boils} F.`, 'boiling');
    for (const v of ticks(low, high)) write(svg, left - 6, y(v) + 4, String(v), 'end');
    for (let v = 0; v <= ceiling; v += 2000) write(svg, x(v), height - bottom + 16, grouped(v));
    write(svg, (left + width - right) / 2, height - 6, 'altitude, ft');
    svg.append(svgMake('path', {class: 'of-table', d: data.boiling.map(([at, f], i) => `${i ? 'L' : 'M'}${x(at)} ${y(f)}`).join('')}));
    svg.append(svgMake('line', {class: 'at', x1: x(ft), x2: x(ft), y1: top, y2: height - bottom, 'data-ft': ft}));
    return make('figure', {}, make('figcaption', {}, 'Where water boils'), svg,
      make('p', {}, `Solid: temperature of boiling water, F. Dotted: ${grouped(ft)} ft, where it is ${boils} F.`));
  };

  // The pH that the ingredients come to, as an interval beside the limit.
  const acidityPlot = ([best, bound, strict, limit]) => {
    const low = 2, high = 8, middle = (top + height - bottom) / 2;
    const x = (v) => left + ((Math.min(Math.max(v, low), high) - low) / (high - low)) * (width - left - right);
    const svg = frame(`Estimated pH: about ${best}; bound ${bound}, strict bound ${strict}. Botulism can grow above ${limit}.`, 'acidity');
    for (let v = low; v <= high; v += 1) write(svg, x(v), height - bottom + 16, String(v));
    write(svg, (left + width - right) / 2, height - 6, 'pH: more acid to the left');
    svg.append(svgMake('line', {class: 'at', x1: x(limit), x2: x(limit), y1: top, y2: height - bottom}));
    write(svg, x(limit) + 6, top + 12, `${limit}`, 'start');
    svg.append(svgMake('line', {class: 'of-card', x1: x(best), x2: x(strict), y1: middle, y2: middle, 'data-values': `${best} ${bound} ${strict}`}));
    for (const v of [best, bound, strict]) svg.append(svgMake('circle', {class: 'point', cx: x(v), cy: middle, r: 4}));
    return make('figure', {}, make('figcaption', {}, 'How acid it may be'), svg,
      make('p', {}, `Dots: best estimate ${best}, bound ${bound}, strict bound ${strict}. Dotted: ${limit}, above which botulism can grow. An estimate, which proves nothing.`));
  };

  // Card and formula line by line, with a bar for how much of the published amount the card has.
  const changeTable = ([factor, lines]) => {
    const body = make('tbody');
    const most = 200;
    for (const [mark, card, published, note, percent] of lines) {
      const cell = make('td');
      if (percent !== null) {
        const bar = svgMake('svg', {viewBox: '0 0 100 12', class: 'bar', 'aria-hidden': 'true'});
        bar.append(svgMake('rect', {class: `amount ${text(mark)}`, x: 0, y: 2, width: Math.min(percent, most) / most * 100, height: 8, 'data-percent': percent}));
        bar.append(svgMake('line', {class: 'at', x1: 50, x2: 50, y1: 0, y2: 12}));
        cell.append(bar, `${Math.round(percent)} %`);
      } else {
        cell.append(text(note));
      }
      body.append(make('tr', {}, make('th', {scope: 'row'}, text(published) || 'not in the formula'),
        make('td', {}, text(card) || 'not on the card'), make('td', {}, text(mark)), cell));
    }
    const batch = Math.abs(factor - 1) < 0.02 ? 'the published batch' : `${Math.round(factor * 100) / 100} times the published batch`;
    return make('table', {class: 'change'}, make('caption', {}, `Card beside the tested formula, at ${batch} (the mark: 100 %)`),
      make('thead', {}, make('tr', {}, ...['tested formula', 'your card', 'how', 'of the published amount'].map((n) => make('th', {scope: 'col'}, n)))), body);
  };

  // ---- one card
  const details = (list) => {
    const dl = make('dl');
    for (const [name, ...value] of list) dl.append(make('dt', {}, name), make('dd', {}, ...value));
    return dl;
  };

  const findingItem = (card, f) => {
    const [rule, severity, topic, line, column, message, why, instead, sources, kitchen, accepted] = f;
    const item = make('li', {'data-severity': severities[severity]});
    const place = kitchen ? `, kitchen file${card.k === null ? '' : ` ${text(card.k)}`}${line > 0 ? `, line ${line}` : ''}` : line > 0 ? `, line ${line}` : '';
    item.append(make('p', {}, make('span', {class: `signal ${severities[severity]}`}, severities[severity]),
      ` ${text(topic)}${place}: ${text(message)}`));
    // Words within a long line stand under line:column, a whole line under its number.
    const within = `${line}:${column}`;
    const quoted = within in card.l ? within : String(line);
    if (!kitchen && quoted in card.l)
      item.append(make('pre', {title: `line ${line}, column ${column}`}, `${quoted} | ${text(card.l[quoted])}`));
    const list = [];
    if (text(why)) list.push(['why', text(why)]);
    if (text(instead)) list.push(['instead', text(instead)]);
    if (sources.length) {
      const links = [];
      sources.forEach((s, i) => { if (i) links.push('; '); links.push(sourceLink(s)); });
      list.push(['source', ...links]);
    }
    if (accepted !== null) list.push(['accepted', `${text(accepted)} (the verdict stays as it is)`]);
    list.push(['rule', text(rule)]);
    item.append(details(list));
    return item;
  };

  const headline = {
    tested: 'tested', hazard: 'HAZARD, do not can it as written',
    unproven: 'unproven, nothing published vouches for all of it', unreadable: 'unreadable, it was not checked',
  };

  const cardArticle = (card) => {
    const verdict = verdicts[card.v];
    const title = card.t || `recipe ${card.d} of the file`;
    const article = make('article', {'data-verdict': verdict});
    article.append(make('h3', {}, title));
    const holds = card.m && verdict === 'tested' && text(card.m[4]) ? `, at ${text(card.m[4])}` : '';
    article.append(make('p', {class: 'verdict'}, make('span', {class: verdict}, headline[verdict] + holds)));
    article.append(make('p', {class: 'file'}, card.d > 1 ? `${card.p}, recipe ${card.d}` : card.p));
    if (card.m) {
      const line = make('p', {}, verdict === 'tested' ? 'follows ' : 'compared with ', text(card.m[1]), ' (', sourceLink(card.m[2]), ')');
      article.append(line);
      if (card.m[5]) article.append(make('p', {}, 'The figures of this process rest on memory: nobody saw the page, so no card is tested by it.'));
    }
    if (card.a.length) article.append(make('p', {}, `provided that ${card.a.map(text).join('; ')}`));
    if (card.f.length) {
      const list = make('ul', {class: 'findings'});
      for (const f of card.f) list.append(findingItem(card, f));
      article.append(list);
    }
    const uses = card.tb.map(tableUse);
    const plots = uses.flatMap((use) => [plot(use, 'minutes', 'minutes', 'Process time'), plot(use, 'psi', 'psi', 'Pressure on the gauge')]).filter((p) => p);
    if (card.s && card.s[0]) plots.push(boilingPlot(card.s[0]));
    if (card.s && card.s[1]) plots.push(acidityPlot(card.s[1]));
    if (card.pt.length || plots.length) {
      const more = make('details', {}, make('summary', {}, card.c ? 'Points and formula compared, and the table over altitude' : 'Points compared, and the table over altitude'));
      if (card.c) more.append(changeTable(card.c));
      if (card.pt.length) {
        const body = make('tbody');
        for (const [kind, state, found, needed] of card.pt)
          body.append(make('tr', {}, make('th', {scope: 'row'}, text(kind)), make('td', {}, text(state)), make('td', {}, text(found)), make('td', {}, text(needed))));
        more.append(make('table', {}, make('caption', {}, 'Card beside the tested process'), make('thead', {}, make('tr', {},
          ...['point', 'state', 'card', 'tested'].map((n) => make('th', {scope: 'col'}, n)))), body));
      }
      more.append(...plots, ...uses.map(plotTable));
      article.append(more);
    }
    return article;
  };

  // ---- filters
  const worst = (card) => card.f.reduce((most, f) => (f[10] === null ? Math.max(most, f[1]) : most), -1);
  for (const card of data.cards) {
    card.worst = worst(card);
    card.words = `${card.t} ${card.p}`.toLowerCase();
  }
  const list = document.getElementById('cards');
  const more = document.getElementById('more');
  let chosen = [];
  let shown = 0;

  const showMore = () => {
    const piece = document.createDocumentFragment();
    for (const card of chosen.slice(shown, shown + page)) piece.append(cardArticle(card));
    shown = Math.min(chosen.length, shown + page);
    list.append(piece);
    more.hidden = shown >= chosen.length;
    const total = plural(data.cards.length, 'card', 'cards');
    document.getElementById('shown').textContent = chosen.length > shown
      ? `${grouped(chosen.length)} of ${total} fit; the first ${grouped(shown)} are listed.`
      : `${grouped(chosen.length)} of ${total} shown.`;
  };

  const choose = () => {
    const wanted = new Set([...document.querySelectorAll('input[name=verdict]:checked')].map((box) => verdicts.indexOf(box.value)));
    const least = severities.indexOf(document.getElementById('severity').value);  // -1: any, or none
    const words = document.getElementById('words').value.toLowerCase().trim();
    chosen = data.cards.filter((card) => wanted.has(card.v) && card.worst >= least && card.words.includes(words));
    shown = 0;
    list.replaceChildren();
    showMore();
  };

  // ---- summary
  const counts = Object.fromEntries(verdicts.map((v) => [v, 0]));
  for (const card of data.cards) counts[verdicts[card.v]] += 1;
  for (const span of document.querySelectorAll('[data-count]')) span.textContent = `(${grouped(counts[span.dataset.count])})`;
  const parts = ['tested', 'hazard', 'unproven', 'unreadable'].filter((v) => counts[v]).map((v) => `${grouped(counts[v])} ${v}`);
  document.getElementById('summary').textContent =
    `${plural(data.cards.length, 'recipe', 'recipes')}${parts.length ? `: ${parts.join(', ')}` : ''}.`;

  document.getElementById('filters').addEventListener('input', choose);
  document.getElementById('filters').addEventListener('submit', (event) => event.preventDefault());
  more.addEventListener('click', () => {
    const from = list.childElementCount;
    showMore();
    const next = list.children[from];
    if (next) { next.tabIndex = -1; next.focus(); }
  });
  addEventListener('beforeprint', () => { for (const d of document.querySelectorAll('details')) d.open = true; });
  choose();
})();
