// Every text that cannot be read to its end: it runs out of a box that hides what is beyond it, out of its button, out of
// the page, or out of a part of the page that stays where it is while the rest is scrolled; or other text lies on it. Run as
// the body of a function.
const SLACK = 1.5;
const name = element => {
    if (element.id) return '#' + element.id;
    const own = element.tagName.toLowerCase() + [...element.classList].map(c => '.' + c).join('');
    return element.parentElement && element.parentElement !== document.body ? `${name(element.parentElement)} > ${own}` : own;
};
const found = new Set();
const say = (text, element, what) => found.add(`"${text.trim().slice(0, 40)}" in ${name(element)}: ${what}`);
const seen = element => element.checkVisibility({visibilityProperty: true, opacityProperty: true});
const over = (a, b) => ({
    x: Math.max(b.left - a.left, a.right - b.right),
    y: Math.max(b.top - a.top, a.bottom - b.bottom),
});

const screen = {left: 0, top: 0, right: document.documentElement.clientWidth, bottom: innerHeight};

// Whether a box can be seen whole, perhaps after scrolling; says so if it cannot.
function follow(rect, host, text) {
    let box = {left: rect.left, right: rect.right, top: rect.top, bottom: rect.bottom};
    for (let a = host; a && a !== document.documentElement; a = a.parentElement) {
        const style = getComputedStyle(a);
        const edge = a.getBoundingClientRect();
        if (style.clipPath === 'inset(50%)') return; // for the ear only
        const out = over(box, edge);
        const hides = value => value === 'hidden' || value === 'clip';
        const scrolls = value => value === 'auto' || value === 'scroll';
        if (hides(style.overflowX) && out.x > SLACK) return say(text, host, `cut off at the side of ${name(a)}`);
        if (hides(style.overflowY) && out.y > SLACK) return say(text, host, `cut off above or below at ${name(a)}`);
        if (a.matches('button, summary, label.button') && (out.x > SLACK || out.y > SLACK)) {
            return say(text, host, `runs out of ${name(a)}`);
        }
        if (scrolls(style.overflowX)) { box.left = edge.left; box.right = edge.right; }
        if (scrolls(style.overflowY)) { box.top = edge.top; box.bottom = edge.bottom; }
        if (style.position === 'fixed') {
            const off = over(box, screen);
            if (off.y > SLACK) return say(text, host, `off the screen in ${name(a)}, which stays`);
            break;
        }
    }
    const off = over(box, screen);
    if (off.x > SLACK) say(text, host, 'off the side of the page');
}

// What stays in its place over the rest may cover text, since that can be scrolled away from under it.
function stays(host) {
    for (let a = host; a && a !== document.documentElement; a = a.parentElement) {
        const style = getComputedStyle(a);
        const has_ground = style.backgroundColor !== 'rgba(0, 0, 0, 0)';
        if (style.position === 'fixed' || (style.position === 'sticky' && has_ground)) return a;
    }
    return null;
}

// What is seen of a text where a part of the page that scrolls holds it.
function clipped(rect, host) {
    const seen = {left: rect.left, right: rect.right, top: rect.top, bottom: rect.bottom};
    for (let a = host; a && a !== document.documentElement; a = a.parentElement) {
        const style = getComputedStyle(a);
        const edge = a.getBoundingClientRect();
        if (style.overflowX !== 'visible') { seen.left = Math.max(seen.left, edge.left); seen.right = Math.min(seen.right, edge.right); }
        if (style.overflowY !== 'visible') { seen.top = Math.max(seen.top, edge.top); seen.bottom = Math.min(seen.bottom, edge.bottom); }
    }
    return seen;
}

const is_unseen = host => {
    for (let a = host; a; a = a.parentElement) if (getComputedStyle(a).clipPath === 'inset(50%)') return true;
    return false;
};

const texts = [];
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const host = node.parentElement;
    if (!node.data.trim() || host.closest('select, option, noscript, script') || !seen(host)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    // Figures in a drawing are set apart by the drawing itself.
    const is_drawn = Boolean(host.closest('svg'));
    const over_all = stays(host);
    for (const rect of range.getClientRects()) {
        if (rect.width === 0) continue;
        follow(rect, host, node.data);
        if (!is_drawn && !is_unseen(host)) texts.push({rect: clipped(rect, host), host, over_all, text: node.data});
    }
}

// Lines of large type stand closer than their boxes are high, so a little of the height may be shared.
for (const [place, a] of texts.entries()) {
    for (const b of texts.slice(place + 1)) {
        if (a.host === b.host || a.over_all !== b.over_all) continue;
        const wide = Math.min(a.rect.right, b.rect.right) - Math.max(a.rect.left, b.rect.left);
        const high = Math.min(a.rect.bottom, b.rect.bottom) - Math.max(a.rect.top, b.rect.top);
        if (wide > 3 && high > 0.4 * Math.min(a.rect.bottom - a.rect.top, b.rect.bottom - b.rect.top) && high > 3) {
            say(a.text, a.host, `"${b.text.trim().slice(0, 40)}" in ${name(b.host)} lies on it`);
        }
    }
}

// What is typed or chosen is no text of the page, and must be measured.
const pen = document.createElement('canvas').getContext('2d');
for (const field of document.querySelectorAll('input:not([type=checkbox], [type=radio], [type=file], [type=color]), select')) {
    // A link to copy is not there to be read.
    if (!seen(field) || field.readOnly) continue;
    const text = field.tagName === 'SELECT' ? field.selectedOptions[0]?.text ?? '' : field.value || field.placeholder;
    const style = getComputedStyle(field);
    const type = text === field.placeholder ? getComputedStyle(field, '::placeholder') : style;
    pen.font = `${type.fontStyle} ${type.fontWeight} ${type.fontSize} ${type.fontFamily}`;
    const room = field.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
    const lacks = pen.measureText(text).width - room;
    if (lacks > SLACK) say(text, field, 'the field is too narrow for it');
    follow(field.getBoundingClientRect(), field.parentElement, text || name(field));
}
return [...found];
