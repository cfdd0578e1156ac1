import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";

/**
 * A second reading of RFC 8493 ("The BagIt File Packaging Format (V1.0)", Kunze et al., 2018), to check bags with: it
 * shares no line with the program's own. It reads a folder and returns what makes the bag incomplete or invalid
 * (section 3), each with the clause; an empty list for a valid bag. Of the algorithms it knows what Node knows.
 */
export function bagFaults(folder: string): readonly string[] {
  const faults: string[] = [];
  const files = filesBelow(folder);
  const read = (file: string): Buffer => readFileSync(join(folder, file));
  const expectThat = (holds: boolean, fault: string): void => void (holds || faults.push(fault));

  // 2.1.1: exactly two lines, UTF-8 without a byte order mark.
  expectThat(files.includes("bagit.txt"), "2.1.1: there is no bagit.txt");
  if (faults.length > 0) return faults;
  const declaration = /^BagIt-Version: 1\.0\r?\nTag-File-Character-Encoding: UTF-8(?:\r?\n)?$/;
  expectThat(declaration.test(read("bagit.txt").toString("latin1")), "2.1.1: bagit.txt declares otherwise");

  // 2.1.2 and 2.1.3: a payload folder, and every payload file in every payload manifest.
  const payload = files.filter((file) => file.startsWith("data/"));
  expectThat(
    statSync(join(folder, "data"), { throwIfNoEntry: false })?.isDirectory() === true,
    "2.1.2: no data/",
  );
  const manifests = files.filter((file) => /^manifest-[a-z0-9]+\.txt$/.test(file));
  expectThat(manifests.length > 0, "2.1.3: there is no payload manifest");
  for (const manifest of manifests) {
    const listed = checkManifest(manifest);
    for (const file of listed) expectThat(file.startsWith("data/"), `2.1.3: ${manifest} lists ${file}`);
    for (const file of payload) expectThat(listed.has(file), `3: ${manifest} does not list ${file}`);
  }

  // 2.2.1: tag files other than tag manifests; each listed must be there and fit.
  for (const manifest of files.filter((file) => /^tagmanifest-[a-z0-9]+\.txt$/.test(file))) {
    const listed = checkManifest(manifest);
    for (const file of listed)
      expectThat(!/^(?:data\/|tagmanifest-)/.test(file), `2.2.1: ${manifest} lists ${file}`);
    for (const other of manifests) expectThat(listed.has(other), `2.2.1: ${manifest} does not list ${other}`);
  }

  // 2.2.2: "label: value", a value going on in lines that begin with white space; the sums of the payload.
  if (files.includes("bag-info.txt")) {
    const info = read("bag-info.txt").toString("utf8");
    for (const line of info.split(/\r?\n/).filter((one) => one !== ""))
      expectThat(/^(?:[^\s:][^:]*: \S|\s+\S)/.test(line), `2.2.2: bag-info.txt has "${line}"`);
    const [, bytes, count] = /^Payload-Oxum: (\d+)\.(\d+)$/m.exec(info) ?? [];
    const sum = payload.reduce((total, file) => total + read(file).length, 0);
    expectThat(
      bytes === undefined || (Number(bytes) === sum && Number(count) === payload.length),
      `2.2.2: Payload-Oxum is ${bytes}.${count}, the payload ${sum}.${payload.length}`,
    );
  }
  return faults;

  function checkManifest(manifest: string): ReadonlySet<string> {
    const algorithm = /-([a-z0-9]+)\.txt$/.exec(manifest)![1]!;
    const listed = new Set<string>();
    for (const line of read(manifest)
      .toString("utf8")
      .split(/\r?\n|\r/)
      .filter((one) => one !== "")) {
      const [, checksum, encoded] = /^([0-9a-fA-F]+)[ \t]+(?:\*|\.\/)?(.+)$/.exec(line) ?? [];
      if (checksum === undefined) {
        faults.push(`2.1.3: ${manifest} has the line "${line}"`);
        continue;
      }
      const file = encoded!.replace(/%(0A|0D|25)/gi, (code) => decodeURIComponent(code));
      expectThat(
        !file.startsWith("/") && !file.split("/").includes(".."),
        `5.2: ${manifest} leads out: ${file}`,
      );
      expectThat(!listed.has(file), `2.1.3: ${manifest} lists ${file} twice`);
      listed.add(file);
      if (!files.includes(file)) faults.push(`3: ${manifest} lists ${file}, which is not there`);
      else
        expectThat(
          createHash(algorithm).update(read(file)).digest("hex") === checksum.toLowerCase(),
          `3: ${file} does not fit ${manifest}`,
        );
    }
    return listed;
  }
}

function filesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll("\\", "/"),
    );
}
