export type Asked = { address: string; gauge: string; token: string }

const curl = ({ address, gauge, token }: Asked) =>
  [
    `curl ${address}`,
    `-H 'Authorization: Bearer ${token}'`,
    "-H 'Content-Type: application/json'",
    `-d '{"gauge": "${gauge}", "value": 25.4}'`,
  ].join(' \\\n  ')

// A board with WiFi and a one-wire probe; it checks no certificate, which the page says.
const microcontroller = ({
  address,
  gauge,
  token,
}: Asked) => `// ESP32 with a DS18B20 at pin 4. Libraries: OneWire, DallasTemperature.
#include <WiFi.h>
#include <WiFiClientSecure.h>
#include <HTTPClient.h>
#include <OneWire.h>
#include <DallasTemperature.h>

OneWire wire(4);
DallasTemperature probe(&wire);

void setup() {
  WiFi.begin("YOUR-NETWORK", "ITS-PASSWORD");
  probe.begin();
}

void loop() {
  probe.requestTemperatures();
  float celsius = probe.getTempCByIndex(0);
  if (WiFi.status() == WL_CONNECTED && celsius > -100) {
    ${new URL(address).protocol === 'https:' ? 'WiFiClientSecure net; net.setInsecure(); // or net.setCACert(...)' : 'WiFiClient net;'}
    HTTPClient http;
    http.begin(net, "${address}");
    http.addHeader("Authorization", "Bearer ${token}");
    http.addHeader("Content-Type", "text/csv");
    http.POST(String("${gauge},,") + String(celsius, 2));
    http.end();
  }
  delay(60000);
}`

const singleBoard = ({
  address,
  gauge,
  token,
}: Asked) => `# Python 3 on a single-board computer with a one-wire probe (dtoverlay=w1-gpio).
import glob, json, time, urllib.request

def celsius():
    with open(glob.glob("/sys/bus/w1/devices/28-*/temperature")[0]) as probe:
        return int(probe.read()) / 1000

waiting = []
while True:
    try:
        waiting.append({"gauge": "${gauge}", "value": celsius(), "at": time.time()})
    except (OSError, IndexError, ValueError) as error:
        print("the probe gave nothing:", error)
    waiting = waiting[-10000:]
    request = urllib.request.Request(
        "${address}", json.dumps(waiting).encode(),
        {"Authorization": "Bearer ${token}", "Content-Type": "application/json"})
    try:
        if waiting:
            urllib.request.urlopen(request, timeout=20)
        waiting = []
    except OSError as error:
        print("kept for the next try:", error)
    time.sleep(60)`

/** Publishes one number at the topic of a gauge, from any machine that reaches the broker. */
export function publishing({ url, username, topic }: { url: string; username: string | null; topic: string }): string {
  const { hostname, port, protocol } = new URL(url)
  const isTls = protocol === 'mqtts:'
  return [
    `mosquitto_pub -h ${hostname} -p ${port || (isTls ? 8883 : 1883)} -q 1`,
    ...(isTls ? ['--tls-use-os-certs'] : []),
    ...(username === null ? [] : ["-u 'A-USER-THAT-MAY-PUBLISH' -P 'ITS-PASSWORD'"]),
    `-t '${topic}' -m 25.4`,
  ].join(' \\\n  ')
}

/** One for each kind of machine that people hang a probe on. */
export const sketches = [
  { value: 'curl', label: 'Any machine', write: curl },
  { value: 'microcontroller', label: 'A microcontroller', write: microcontroller },
  { value: 'single-board', label: 'A single-board computer', write: singleBoard },
] as const
