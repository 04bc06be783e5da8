//! The rules of accessibility, laid on the screen that is open.
//!
//! Outside source: axe-core, at the version that `crates/xtask/src/pins.rs` names.

use std::fmt;
use std::fs;

use anyhow::{Context, Result, ensure};
use serde::Deserialize;

use crate::page::Page;
use crate::programs::Places;

/// The Web Content Accessibility Guidelines 2.0 to 2.2 at levels A and AA, and what is good practice beyond them.
const RUN: &str = "
    const done = arguments[0];
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    axe.run(document, {runOnly: {type: 'tag', values: tags}, resultTypes: ['violations', 'passes']}).then(
        found => done({
            rules: found.passes.length + found.violations.length,
            findings: found.violations.flatMap(({id, nodes}) => nodes.map(node => ({
                rule: id,
                selector: node.target.join(' '),
                summary: node.failureSummary.split(/\\s*\\n\\s*/).slice(1).join('; '),
            }))),
        }),
        error => done({rules: 0, findings: [{rule: 'axe', selector: '', summary: String(error)}]}),
    );
";

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
        let found = self.driver().execute_async(RUN, vec![]).await?;
        let found: Found = serde_json::from_value(found.json().clone())?;
        ensure!(
            found.rules >= FEWEST_RULES,
            "only {} rules of accessibility were applied: {:?}",
            found.rules,
            found.findings
        );
        Ok(found.findings)
    }
}
