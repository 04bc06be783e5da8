//! A choice from a few visible options.

use yew::prelude::*;

/// A row of buttons, one of which is pressed. Each option has a value, an element suffix and a word.
pub fn choice<T: Copy + PartialEq + 'static>(
    label: &str,
    id: &str,
    options: &[(T, &'static str, &'static str)],
    value: T,
    on_choose: Callback<T>,
) -> Html {
    let values: Vec<T> = options.iter().map(|&(value, ..)| value).collect();
    let pressed = values.iter().position(|other| *other == value);
    let words: Vec<_> = options.iter().map(|&(_, key, word)| (key, word)).collect();
    buttons(
        label,
        id,
        &words,
        pressed,
        on_choose.reform(move |place: usize| values[place]),
    )
}

fn buttons(
    label: &str,
    id: &str,
    words: &[(&'static str, &'static str)],
    pressed: Option<usize>,
    on_choose: Callback<usize>,
) -> Html {
    let button = |(place, (key, word)): (usize, &(&'static str, &'static str))| {
        let is_pressed = pressed == Some(place);
        html! {
            <button type="button" id={format!("{id}-{key}")} aria-pressed={is_pressed.to_string()} data-word={*word}
                onclick={on_choose.reform(move |_| place)}>{ *word }</button>
        }
    };
    html! {
        <div class="choice" role="group" aria-label={label.to_owned()}>
            <span class="label">{ label }</span>
            <div class="buttons">{ for words.iter().enumerate().map(button) }</div>
        </div>
    }
}
