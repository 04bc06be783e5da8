//! Files as a good host sends them: compressed with brotli, as small as it gets.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::command;

/// Node has brotli built in, and is there for wasm-opt anyway. Each file is printed behind a line with its length.
const COMPRESS: &str = "\
const zlib = require('node:zlib'), fs = require('node:fs'), c = zlib.constants;
for (const file of process.argv.slice(1)) {
  const raw = fs.readFileSync(file);
  const params = { [c.BROTLI_PARAM_QUALITY]: 11, [c.BROTLI_PARAM_SIZE_HINT]: raw.length };
  const small = zlib.brotliCompressSync(raw, { params });
  fs.writeSync(1, small.length + '\\n');
  for (let from = 0; from < small.length; from += fs.writeSync(1, small, from));
}";

/// Each of the files, compressed.
pub(crate) fn compressed(files: &[PathBuf]) -> Result<Vec<Vec<u8>>> {
    let printed = command::bytes(Command::new("node").arg("-e").arg(COMPRESS).arg("--").args(files))?;
    let all = parted(&printed).context("Node printed something other than compressed files")?;
    ensure!(
        all.len() == files.len(),
        "Node compressed the wrong number of files"
    );
    Ok(all)
}

/// What stands behind each length.
fn parted(mut printed: &[u8]) -> Option<Vec<Vec<u8>>> {
    let mut all = Vec::new();
    while !printed.is_empty() {
        let end = printed.iter().position(|byte| *byte == b'\n')?;
        let length: usize = std::str::from_utf8(&printed[..end]).ok()?.parse().ok()?;
        let (file, rest) = printed[end + 1..].split_at_checked(length)?;
        all.push(file.to_vec());
        printed = rest;
    }
    Some(all)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_are_parted_by_their_lengths() {
        let all = parted(b"3\na\nb0\n2\n12").unwrap();
        assert_eq!(all, [b"a\nb".to_vec(), vec![], b"12".to_vec()]);
        assert_eq!(parted(b"3\nab"), None);
        assert_eq!(parted(b"no length"), None);
    }
}
