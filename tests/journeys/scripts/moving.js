// Every element with a transition or an animation that takes time. Run as the body of a function.
const seconds = list => Math.max(...list.split(',').map(time => parseFloat(time) * (time.includes('ms') ? 0.001 : 1)));
const found = new Set();
for (const element of document.querySelectorAll('*')) {
    for (const part of [null, '::before', '::after']) {
        const style = getComputedStyle(element, part);
        const animated = style.animationName !== 'none' && seconds(style.animationDuration) > 0.01;
        if (animated || seconds(style.transitionDuration) > 0.01 || style.scrollBehavior === 'smooth') {
            const name = element.id ? '#' + element.id : element.tagName.toLowerCase() + '.' + element.classList;
            found.add(name + (part ?? ''));
        }
    }
}
return [...found];
