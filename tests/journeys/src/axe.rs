//! The rules of accessibility, laid on the screen that is open.
//!
//! Outside source: axe-core, at the version that `crates/xtask/src/pins.rs` names.

use std::fmt;
use std::fs;

use anyhow::{Context, Result, ensure};
use serde::Deserialize;
use serde_json::{Value, json};

use crate::page::Page;
use crate::programs::Places;

/// The Web Content Accessibility Guidelines 2.0 to 2.2 at levels A and AA, and what is good practice beyond them.
const RUN: &str = "
    const [colours, done] = arguments;
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    // Of the rules that are kept only the number is wanted: to describe every element that keeps one takes longer than to
    // look. What would be loaded before the run is for rules that are not asked for.
    const runOnly = colours ? {type: 'rule', values: colours} : {type: 'tag', values: tags};
    const options = {runOnly, resultTypes: ['violations'], preload: {assets: ['media']}};
    // What stays in its place may lie over a target, since that can be scrolled away from under it.
    const before = document.adoptedStyleSheets;
    const still = new CSSStyleSheet();
    still.replaceSync('.head, .job, .strip, .drawn, .left, .now { position: static !important }');
    document.adoptedStyleSheets = [...before, still];
    const tell = found => {
        document.adoptedStyleSheets = before;
        done(found);
    };
    axe.run(document, options).then(
        found => tell({
            rules: found.passes.length + found.violations.length,
            findings: found.violations.flatMap(({id, nodes}) => nodes.map(node => ({
                rule: id,
                selector: node.target.join(' '),
                summary: node.failureSummary.split(/\\s*\\n\\s*/).slice(1).join('; '),
            }))),
        }),
        error => tell({rules: 0, findings: [{rule: 'axe', selector: '', summary: String(error)}]}),
    );
";

/// The rules that look at colours, and at sizes, which a frame in another light may change. Another light changes nothing
/// else: `tokens.css` holds all that it does.
const OF_LIGHT: [&str; 3] = ["color-contrast", "link-in-text-block", "target-size"];

/// Fewer rules than this apply to no screen of the page: then something is wrong with the rules.
const FEWEST_RULES: usize = 10;

#[derive(Deserialize)]
struct Found {
    rules: usize,
    findings: Vec<Finding>,
}

/// Something that is in a person's way.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
pub struct Finding {
    /// The rule that it is against.
    pub rule: String,
    /// Where it is.
    pub selector: String,
    /// What is wrong.
    pub summary: String,
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Finding {
            rule,
            selector,
            summary,
        } = self;
        write!(f, "{rule}: {selector}: {summary}")
    }
}

impl Page {
    /// What the rules of accessibility find on the screen that is open.
    ///
    /// # Errors
    /// If the rules are not there, or do not run.
    pub async fn findings(&self) -> Result<Vec<Finding>> {
        self.applied(Value::Null, FEWEST_RULES).await
    }

    /// The same by those rules alone for which it matters in which light the page is; the others were applied before.
    ///
    /// # Errors
    /// As for [`Page::findings`].
    pub async fn findings_of_light(&self) -> Result<Vec<Finding>> {
        self.applied(json!(OF_LIGHT), 1).await
    }

    async fn applied(&self, rules: Value, fewest: usize) -> Result<Vec<Finding>> {
        if self.ask("return typeof axe").await? != "object" {
            let path = Places::find()?.axe;
            let script = fs::read_to_string(&path).with_context(|| {
                format!(
                    "The rules of accessibility are not at {}. Run `cargo xtask setup`.",
                    path.display()
                )
            })?;
            self.ask(&script).await?;
        }
        let found = self.driver().execute_async(RUN, vec![rules]).await?;
        let found: Found = serde_json::from_value(found.json().clone())?;
        ensure!(
            found.rules >= fewest,
            "only {} rules of accessibility were applied: {:?}",
            found.rules,
            found.findings
        );
        Ok(found.findings)
    }
}
