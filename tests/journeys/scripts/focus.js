// What the focus is on, and why a person could not see it there. Run as the body of a function.
const element = document.activeElement;
if (!element || element === document.body) return {name: 'the page', fault: null};
const name = element.id ? '#' + element.id
    : element.tagName.toLowerCase() + [...element.classList].map(c => '.' + c).join('') + ` "${element.textContent.trim().slice(0, 30)}"`;
// A field for the ear and the keyboard only is seen by its label.
let shown = element;
const own = element.getBoundingClientRect();
if (own.width <= 2 && element.labels?.length) shown = element.labels[0];
const style = getComputedStyle(shown);
const outlined = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
const box = shown.getBoundingClientRect();
const clear = {left: Math.max(box.left, 0), right: Math.min(box.right, innerWidth), top: Math.max(box.top, 0), bottom: Math.min(box.bottom, innerHeight)};
const met = clear.right > clear.left && clear.bottom > clear.top
    ? document.elementFromPoint((clear.left + clear.right) / 2, (clear.top + clear.bottom) / 2) : null;
const free = met && (shown.contains(met) || met.contains(shown));
let fault = null;
if (!outlined) fault = 'nothing shows that the focus is there';
else if (!met) fault = `the focus is off the screen, ${box.x.toFixed(0)} across and ${box.y.toFixed(0)} down`;
else if (!free) fault = `${met.id ? '#' + met.id : met.tagName.toLowerCase() + '.' + met.classList} lies over the focus`;
return {name, fault};
